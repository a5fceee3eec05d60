package groundbass.score;

import groundbass.theory.Key;
import java.util.Locale;
import java.util.Optional;

/**
 * What is different from this bar on, as written before it.
 *
 * @param section the name of the section that begins here
 * @param style what strikes a note that has no word of its own
 * @param slowingTo beats a minute that the tempo has fallen to, evenly, by the end of this bar; it stays there until
 *     the next tempo
 * @param place what this bar begins on the sheet, because the writer wants it so
 */
public record Changes(
        Optional<String> section,
        Optional<Key> key,
        Optional<Meter> meter,
        Optional<Tempo> tempo,
        Optional<Integer> slowingTo,
        Optional<Feel> feel,
        Optional<Technique> style,
        Optional<Fresh> place) {
    public static final Changes NONE = new Changes(
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty());

    /** Where on a sheet a bar is made to stand: at the head of a system, or of a page. Says nothing of the music. */
    public enum Fresh {
        SYSTEM,
        PAGE;

        /** The word that line text uses. */
        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public Changes {
        if (section.filter(name -> !isName(name)).isPresent()) {
            throw new IllegalArgumentException("a section has a name of one line: " + section.get());
        }
        if (slowingTo.filter(n -> n < Tempo.SLOWEST || n > Tempo.FASTEST).isPresent()) {
            throw new IllegalArgumentException("no such tempo: " + slowingTo.get());
        }
    }

    private static boolean isName(String text) {
        return !text.isEmpty()
                && text.equals(text.strip())
                && text.length() <= Header.LONGEST_TEXT
                && text.chars().noneMatch(Character::isISOControl);
    }

    public boolean isNone() {
        return equals(NONE);
    }

    public Changes withSection(String name) {
        return new Changes(Optional.of(name), key, meter, tempo, slowingTo, feel, style, place);
    }

    public Changes with(Key newKey) {
        return new Changes(section, Optional.of(newKey), meter, tempo, slowingTo, feel, style, place);
    }

    public Changes with(Meter newMeter) {
        return new Changes(section, key, Optional.of(newMeter), tempo, slowingTo, feel, style, place);
    }

    public Changes with(Tempo newTempo) {
        return new Changes(section, key, meter, Optional.of(newTempo), slowingTo, feel, style, place);
    }

    public Changes withSlowingTo(int perMinute) {
        return new Changes(section, key, meter, tempo, Optional.of(perMinute), feel, style, place);
    }

    public Changes with(Feel newFeel) {
        return new Changes(section, key, meter, tempo, slowingTo, Optional.of(newFeel), style, place);
    }

    public Changes with(Technique newStyle) {
        return new Changes(section, key, meter, tempo, slowingTo, feel, Optional.of(newStyle), place);
    }

    public Changes with(Fresh newPlace) {
        return new Changes(section, key, meter, tempo, slowingTo, feel, style, Optional.of(newPlace));
    }
}
