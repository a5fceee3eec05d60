package groundbass.score;

import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The open strings, from string 1 (the highest) to the lowest (rule: open-strings). */
public record Tuning(List<OpenString> strings) {
    public static final int MOST_STRINGS = 12;
    public static final Tuning STANDARD = sounding("G2", "D2", "A1", "E1");
    public static final Tuning FIVE_STRING = sounding("G2", "D2", "A1", "E1", "B0");
    public static final Tuning SIX_STRING = sounding("C3", "G2", "D2", "A1", "E1", "B0");

    private static final int HIGHEST_OPEN = 127 - Place.Fretted.MOST_FRETS;

    /**
     * One string: the name that line text uses for it, and what it sounds when open. The two differ where a line is
     * typed for one tuning and sounds in another.
     */
    public record OpenString(NoteName name, Pitch pitch) {
        public OpenString {
            Objects.requireNonNull(name);
            if (!isOpenPitch(pitch.name(), pitch.octave())) {
                throw new IllegalArgumentException("no open string sounds " + pitch);
            }
        }

        /** Whether a string may sound so: so low and high that every fret of it is a MIDI note (0 to 127). */
        public static boolean isOpenPitch(NoteName name, int octave) {
            boolean exists = octave >= Pitch.LOWEST_OCTAVE && octave <= Pitch.HIGHEST_OCTAVE;
            return exists && new Pitch(name, octave).midi() >= 0 && new Pitch(name, octave).midi() <= HIGHEST_OPEN;
        }

        public static OpenString of(Pitch pitch) {
            return new OpenString(pitch.name(), pitch);
        }
    }

    public Tuning {
        strings = List.copyOf(strings);
        if (strings.isEmpty() || strings.size() > MOST_STRINGS) {
            throw new IllegalArgumentException("a neck has 1 to " + MOST_STRINGS + " strings: " + strings.size());
        }
    }

    /** From scientific pitch names without accidentals or with one, highest string first: {@code G2}, {@code F#1}. */
    public static Tuning sounding(String... highestFirst) {
        return new Tuning(Stream.of(highestFirst).map(Tuning::open).toList());
    }

    private static OpenString open(String text) {
        int last = text.length() - 1;
        var name = NoteName.parse(text.substring(0, last)).orElseThrow();
        return OpenString.of(new Pitch(name, Character.digit(text.charAt(last), 10)));
    }

    public int size() {
        return strings.size();
    }

    /** @param number from 1, the highest string */
    public OpenString string(int number) {
        return strings.get(number - 1);
    }

    /** The MIDI number that sounds at a fretted place; the only place that adds frets to pitches. */
    public int midi(Place.Fretted place) {
        return string(place.string()).pitch().midi() + place.fret();
    }

    /** Every place where a pitch lies on a neck of so many frets, from the lowest string up (rule: twelve-frets-an-octave). */
    public List<Place.Fretted> placesOf(int midi, int frets) {
        return IntStream.rangeClosed(1, size())
                .filter(number -> {
                    int fret = midi - string(number).pitch().midi();
                    return fret >= 0 && fret <= frets;
                })
                .mapToObj(number ->
                        new Place.Fretted(number, midi - string(number).pitch().midi()))
                .sorted(Comparator.comparing(Place.Fretted::string).reversed())
                .toList();
    }

    /** The letter that a string is typed with, or its number where the letter would be ambiguous: {@code A}, {@code s3}. */
    public String typed(int number) {
        var name = string(number).name();
        return numberOf(name).isPresent() ? name.toString() : "s" + number;
    }

    /** A place as it is typed: {@code A3}, {@code Ax}, {@code s3f3}. */
    public String typed(Place place) {
        String string = typed(place.string());
        if (place instanceof Place.Fretted fretted) {
            return string + (string.startsWith("s") ? "f" : "") + fretted.fret();
        }
        return string + "x";
    }

    /** The number of the only string typed with this name; empty where none or several have it. */
    public Optional<Integer> numberOf(NoteName name) {
        var found = IntStream.rangeClosed(1, size())
                .filter(number -> string(number).name().equals(name))
                .boxed()
                .toList();
        return found.size() == 1 ? Optional.of(found.get(0)) : Optional.empty();
    }
}
