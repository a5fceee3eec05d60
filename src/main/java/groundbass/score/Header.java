package groundbass.score;

import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.Objects;

/**
 * What stands at the head of a line and holds until a bar changes it.
 *
 * @param title, composer, rights one line each, empty where not stated
 * @param frets how many the neck has
 * @param style what strikes a note that has no word of its own
 */
public record Header(
        String title,
        String composer,
        String rights,
        Key key,
        Meter meter,
        Tempo tempo,
        Feel feel,
        Tuning tuning,
        int frets,
        Technique style) {
    public static final int USUAL_FRETS = 24;

    /** Characters of a title, a name or a note on rights. */
    public static final int LONGEST_TEXT = 200;

    /** C major, 4/4, 100 quarters a minute, four strings, fingers. */
    public static final Header PLAIN = new Header(
            "",
            "",
            "",
            new Key(NoteName.of(Letter.C), Mode.MAJOR),
            Meter.COMMON,
            new Tempo(100, Fraction.of(1, 4)),
            Feel.STRAIGHT,
            Tuning.STANDARD,
            USUAL_FRETS,
            Technique.FINGER);

    public Header {
        Objects.requireNonNull(key);
        Objects.requireNonNull(meter);
        Objects.requireNonNull(tempo);
        Objects.requireNonNull(feel);
        Objects.requireNonNull(tuning);
        Objects.requireNonNull(style);
        checkOneLine(title);
        checkOneLine(composer);
        checkOneLine(rights);
        if (frets < 1 || frets > Place.Fretted.MOST_FRETS) {
            throw new IllegalArgumentException("no neck has so many frets: " + frets);
        }
    }

    public Header withTitle(String newTitle) {
        return new Header(newTitle, composer, rights, key, meter, tempo, feel, tuning, frets, style);
    }

    public Header withComposer(String newComposer) {
        return new Header(title, newComposer, rights, key, meter, tempo, feel, tuning, frets, style);
    }

    public Header withRights(String newRights) {
        return new Header(title, composer, newRights, key, meter, tempo, feel, tuning, frets, style);
    }

    public Header withFrets(int newFrets) {
        return new Header(title, composer, rights, key, meter, tempo, feel, tuning, newFrets, style);
    }

    public Header with(Key newKey) {
        return new Header(title, composer, rights, newKey, meter, tempo, feel, tuning, frets, style);
    }

    public Header with(Meter newMeter) {
        return new Header(title, composer, rights, key, newMeter, tempo, feel, tuning, frets, style);
    }

    public Header with(Tempo newTempo) {
        return new Header(title, composer, rights, key, meter, newTempo, feel, tuning, frets, style);
    }

    public Header with(Feel newFeel) {
        return new Header(title, composer, rights, key, meter, tempo, newFeel, tuning, frets, style);
    }

    public Header with(Tuning newTuning) {
        return new Header(title, composer, rights, key, meter, tempo, feel, newTuning, frets, style);
    }

    public Header with(Technique newStyle) {
        return new Header(title, composer, rights, key, meter, tempo, feel, tuning, frets, newStyle);
    }

    private static void checkOneLine(String text) {
        boolean oneLine = text.equals(text.strip()) && text.chars().noneMatch(Character::isISOControl);
        if (!oneLine || text.length() > LONGEST_TEXT) {
            throw new IllegalArgumentException("a header is one line without outer spaces: " + text);
        }
    }
}
