package groundbass.theory;

import groundbass.theory.ChordSymbol.Chord;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Which name a sounding pitch takes. A chord's tones are named by their steps above the root (a third is written as a
 * third), and so are its ninth, eleventh and thirteenth. In a key, the scale's own name comes first. A note of neither
 * is a raised degree where it rises by a semitone and a lowered one where it falls; where it does neither, it has the
 * name of the harmonic chromatic scale, but the b5 of a minor key, the blue note, stays flat both ways, unless it leads
 * into the root of the next chord (rule: chord-tone-names, outside-notes). A raised or lowered degree takes its other name where the first would hide a natural note, as
 * C flat does in F major (common practice, no source).
 */
public final class Spelling {
    private static final List<Degree> FALLING = degrees("1 b2 2 b3 3 4 b5 5 b6 6 b7 7");
    private static final List<Degree> STANDING = degrees("1 b2 2 b3 3 4 #4 5 b6 6 b7 7");
    private static final List<Degree> RISING = degrees("1 #1 2 #2 3 4 #4 5 #5 6 #6 7");
    private static final List<Degree> STANDING_IN_MINOR = FALLING;
    private static final List<Degree> RISING_IN_MINOR = degrees("1 #1 2 b3 3 4 b5 5 b6 6 b7 7");
    private static final List<Degree> LEADING_IN_MINOR = degrees("1 #1 2 b3 3 4 #4 5 b6 6 b7 7");

    /** Whole steps above the root that any chord may carry: ninth, eleventh, thirteenth. */
    private static final Set<Integer> NATURAL_TENSIONS = Set.of(2, 5, 9);

    /** Where a note goes next. */
    public enum Way {
        /** A semitone up, in whatever octave. */
        RISES,
        /** A semitone up, to the root of a chord that begins there: a leading note. */
        LEADS,
        /** A semitone down, in whatever octave. */
        FALLS,
        /** By a leap or a whole tone, or nobody knows where to. */
        STANDS;

        /** From one MIDI number to the next. */
        public static Way of(int midi, int nextMidi) {
            return switch (Math.floorMod(nextMidi - midi, 12)) {
                case 1 -> RISES;
                case 11 -> FALLS;
                default -> STANDS;
            };
        }
    }

    private Spelling() {}

    /** The pitch sounding as {@code midi} in {@code key}, where nothing is known of chord or of what follows. */
    public static Pitch of(Key key, int midi) {
        return of(key, midi, midi);
    }

    /** The pitch sounding as {@code midi} in {@code key}, on the way to {@code nextMidi}. */
    public static Pitch of(Key key, int midi, int nextMidi) {
        int pitchClass = Math.floorMod(midi, 12);
        var name = inScale(key, pitchClass).orElseGet(() -> outside(key, pitchClass, Way.of(midi, nextMidi)));
        return Pitch.sounding(name, midi);
    }

    /** The scale's own name; empty for a pitch class that it has not. */
    public static Optional<NoteName> inScale(Key key, int pitchClass) {
        return key.scale().stream()
                .filter(degree -> degree.pitchClass() == pitchClass)
                .findFirst();
    }

    /** The name as a tone of the chord, or as the bass that the chord names after a stroke. */
    public static Optional<NoteName> inChord(Chord chord, int pitchClass) {
        return chord.degree(pitchClass)
                .map(degree -> degree.above(chord.root()))
                .or(() -> chord.bass().filter(bass -> bass.pitchClass() == pitchClass));
    }

    /** The name as the chord's ninth, eleventh or thirteenth, where that is a name that the key's players read easily. */
    public static Optional<NoteName> asTension(Key key, Chord chord, int pitchClass) {
        int above = Math.floorMod(pitchClass - chord.root().pitchClass(), 12);
        return NATURAL_TENSIONS.contains(above) ? readable(key, stacked(chord, pitchClass)) : Optional.empty();
    }

    /** The name as an altered tone above the chord's root: b9, #11, b13 and their kin, where it is easily read. */
    public static Optional<NoteName> asAlteration(Key key, Chord chord, int pitchClass) {
        return readable(key, stacked(chord, pitchClass));
    }

    /** The name of a pitch class outside the key's scale. */
    public static NoteName outside(Key key, int pitchClass, Way way) {
        int semitones = Math.floorMod(pitchClass - key.tonic().pitchClass(), 12);
        var name = degrees(key, way).get(semitones).above(key.tonic());
        boolean raised = way == Way.RISES || way == Way.LEADS;
        var other = degrees(key, raised ? Way.FALLS : Way.RISES).get(semitones).above(key.tonic());
        return isPlain(name) ? name : other;
    }

    /** Every name outside the scale that a pitch class may be read by in a key, at most two. */
    public static Set<NoteName> choices(Key key, int pitchClass) {
        var plain = Stream.of(Letter.values())
                .flatMap(letter -> Stream.of(-1, 0, 1).map(sign -> new NoteName(letter, sign)))
                .filter(name -> name.pitchClass() == pitchClass && isPlain(name));
        return Stream.concat(plain, Stream.of(Way.values()).map(way -> outside(key, pitchClass, way)))
                .collect(Collectors.toSet());
    }

    private static List<Degree> degrees(Key key, Way way) {
        boolean minor = key.mode().isMinorish();
        return switch (way) {
            case RISES -> minor ? RISING_IN_MINOR : RISING;
            case LEADS -> minor ? LEADING_IN_MINOR : RISING;
            case FALLS -> FALLING;
            case STANDS -> minor ? STANDING_IN_MINOR : STANDING;
        };
    }

    /** By the step above the root that has this size in stacked thirds: lowered, but for the raised fourth. */
    private static NoteName stacked(Chord chord, int pitchClass) {
        int above = Math.floorMod(pitchClass - chord.root().pitchClass(), 12);
        boolean fifth = chord.quality().has(Degree.parse("5"));
        return (fifth ? STANDING : FALLING).get(above).above(chord.root());
    }

    private static Optional<NoteName> readable(Key key, NoteName name) {
        return choices(key, name.pitchClass()).contains(name) ? Optional.of(name) : Optional.empty();
    }

    /** Whether players read the name without a second thought. */
    private static boolean isPlain(NoteName name) {
        return name.alteration() == 0
                || Stream.of(Letter.values()).noneMatch(letter -> letter.semitones() == name.pitchClass());
    }

    private static List<Degree> degrees(String text) {
        return List.of(text.split(" ")).stream().map(Degree::parse).toList();
    }
}
