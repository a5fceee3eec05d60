package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Interval;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.theory.Spelling;
import java.util.List;
import java.util.Optional;

/**
 * One pitch that needs a name, and all that may decide it.
 *
 * @param note which note of its bar, from 0; a grace note bears the number of its main note
 * @param string on which it is played, from 1
 * @param reached whether the fretting hand comes to it from the note before on its string, without a new stroke
 * @param at when its note begins, from the bar's first count
 * @param way where it goes next
 * @param forced the name that the player wants
 */
record PitchToName(
        int note,
        int string,
        boolean reached,
        boolean grace,
        Fraction at,
        int midi,
        Spelling.Way way,
        Key key,
        Optional<Chord> chord,
        Optional<NoteName> forced) {
    PitchToName withForced(Optional<NoteName> name) {
        return new PitchToName(note, string, reached, grace, at, midi, way, key, chord, name);
    }

    PitchToName asGrace() {
        return new PitchToName(note, string, false, true, at, midi, way, key, chord, forced);
    }

    int pitchClass() {
        return Math.floorMod(midi, 12);
    }

    Pitch pitch(NoteName name) {
        return Pitch.sounding(name, midi);
    }

    boolean soundsWith(PitchToName that) {
        return !grace && !that.grace && at.equals(that.at);
    }

    /** Whether this is a grace note, and {@code that} the note which it leads to. */
    boolean leadsTo(PitchToName that) {
        return grace && !that.grace && note == that.note;
    }

    /** The player's name, else the chord's, else the scale's. */
    Optional<NoteName> firm() {
        return forced.or(() -> chord.flatMap(found -> Spelling.inChord(found, pitchClass())))
                .or(() -> chord.flatMap(found -> Spelling.asTension(key, found, pitchClass())))
                .or(() -> Spelling.inScale(key, pitchClass()));
    }

    /** The name of a note that moves on by a semitone. */
    Optional<NoteName> resolved() {
        return way == Spelling.Way.STANDS ? Optional.empty() : Optional.of(Spelling.outside(key, pitchClass(), way));
    }

    /**
     * The name that makes a double stop, or two notes under one slur, the interval that they are: three semitones are a
     * third, two a second (rule: double-stop-names, slurred-notes-names).
     */
    Optional<NoteName> fitting(List<Pitch> together) {
        if (together.isEmpty()) {
            return Optional.empty();
        }
        var choices = Spelling.choices(key, pitchClass());
        long most =
                choices.stream().mapToLong(name -> fits(name, together)).max().orElse(0);
        var best = choices.stream().filter(name -> fits(name, together) == most).toList();
        return best.size() == 1 && choices.size() > 1 ? Optional.of(best.get(0)) : Optional.empty();
    }

    /** The name where nothing that comes later decides: above the chord's root, else in the key. */
    NoteName standing() {
        return chord.flatMap(found -> Spelling.asAlteration(key, found, pitchClass()))
                .orElseGet(() -> Spelling.outside(key, pitchClass(), Spelling.Way.STANDS));
    }

    private long fits(NoteName name, List<Pitch> together) {
        return together.stream()
                .filter(other -> isPlain(Interval.between(pitch(name), other)))
                .count();
    }

    /** Whether no other spelling of an interval is commoner: perfect, major or minor, or a tritone. */
    private static boolean isPlain(Interval interval) {
        return interval.kind()
                .filter(kind -> switch (kind) {
                    case PERFECT, MAJOR, MINOR -> true;
                    case AUGMENTED, DIMINISHED -> interval.semitones() % 12 == 6;
                })
                .isPresent();
    }
}
