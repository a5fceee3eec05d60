package groundbass.fingering;

import groundbass.performance.Performance;
import groundbass.performance.Played;
import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.List;

/**
 * The notes of a line that sound together from one moment on.
 *
 * @param notes those that begin, then those that are held
 * @param beginning how many of them begin
 */
record Sounding(double start, double end, List<Played> notes, int beginning) {
    Sounding {
        notes = List.copyOf(notes);
    }

    /** Every moment at which a note of the written line begins. */
    static List<Sounding> of(Performance performance) {
        var all = new ArrayList<Sounding>();
        var beginning = new ArrayList<Played>();
        var held = List.<Played>of();
        for (var played : performance.firstPlaying()) {
            if (!beginning.isEmpty() && !at(beginning.get(0)).equals(at(played))) {
                all.add(moment(performance, beginning, held));
                held = all.get(all.size() - 1).notes();
                beginning.clear();
            }
            beginning.add(played);
        }
        if (!beginning.isEmpty()) {
            all.add(moment(performance, beginning, held));
        }
        return List.copyOf(all);
    }

    private static Fraction at(Played played) {
        return played.onset();
    }

    private static Sounding moment(Performance performance, List<Played> beginning, List<Played> before) {
        var onset = beginning.get(0).onset();
        var notes = new ArrayList<>(beginning);
        before.stream()
                .filter(note -> note.end().isAfter(onset) && isHolding(note, beginning))
                .forEach(notes::add);
        var end = notes.stream().map(Played::end).reduce(Fraction::min).orElseThrow();
        double start = beginning.get(0).start();
        return new Sounding(start, Math.max(start, performance.seconds(end)), notes, beginning.size());
    }

    private static boolean isHolding(Played note, List<Played> beginning) {
        return !note.note().isDead()
                && !note.note().has(Mark.RING)
                && beginning.stream().noneMatch(other -> other.string() == note.string());
    }

    /** As written, with the fingers that are written. */
    SoundingMoment written() {
        var wanted = new ArrayList<NoteConstraint>();
        for (int i = 0; i < notes.size(); i++) {
            var note = wanted(notes.get(i));
            wanted.add(i < beginning ? note : note.sustained());
        }
        return new SoundingMoment(start, end, wanted);
    }

    /** The same pitches wherever they lie; what is bound to its place stays. */
    SoundingMoment anywhere(Fretboard neck) {
        var wanted = new ArrayList<NoteConstraint>();
        for (int i = 0; i < notes.size(); i++) {
            var note = wanted(notes.get(i));
            var free = isMovable(notes.get(i)) ? note.among(places(notes.get(i), neck)) : note;
            wanted.add(i < beginning ? free : free.sustained());
        }
        return new SoundingMoment(start, end, wanted);
    }

    private static List<Place> places(Played played, Fretboard neck) {
        Tuning tuning = neck.tuning();
        int midi = played.note().midi(tuning).orElseThrow();
        return List.copyOf(tuning.placesOf(midi, neck.frets()));
    }

    private static boolean isMovable(Played played) {
        var note = played.note();
        return !note.isDead()
                && note.ornaments().harmonic().isEmpty()
                && note.arrival().filter(Arrival::isGrace).isEmpty()
                && note.pluck().filter(technique -> technique == Technique.TAP).isEmpty();
    }

    private static NoteConstraint wanted(Played played) {
        var note = played.note();
        var ornaments = note.ornaments();
        boolean pressed = ornaments.bend().isPresent()
                || ornaments.slideIn().isPresent()
                || ornaments.slideOff().isPresent()
                || note.has(Mark.VIBRATO);
        return new NoteConstraint(
                List.of(note.place()),
                ornaments.finger(),
                note.pluck(),
                note.arrival().filter(arrival -> !arrival.isGrace()).map(Arrival::kind),
                pressed,
                false);
    }
}
