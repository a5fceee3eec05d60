package groundbass.braille;

import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Technique;
import java.util.Optional;

/**
 * What music braille has no sign for, and stands as a short word after the word sign; the key before the music says
 * what it means (rule: braille-words-of-ours). None of them is the abbreviation of a loudness.
 */
enum BrailleWord {
    SLAP("sl", "sheet.sign.slap"),
    POP("pop", "sheet.sign.pop"),
    THUMB("th", "sheet.sign.thumb"),
    FINGER("fi", "sheet.sign.finger"),
    INDEX("i", "sheet.sign.index"),
    MIDDLE("m", "sheet.sign.middle"),
    PICK("pk", "sheet.sign.pick"),
    PLUCK("pl", "sheet.sign.pluck"),
    TAP("tap", "sheet.sign.tap"),
    MUTE("pm", "sheet.sign.mute"),
    RAKE("rk", "sheet.sign.rake"),
    LEFT_HAND("lh", "sheet.sign.left_hand"),
    DEAD("x", "sheet.sign.dead"),
    VIBRATO("vib", "sheet.sign.vibrato"),
    RING("lr", "sheet.sign.ring"),
    BRACKET("tog", "sheet.sign.bracket"),
    BEND("b", "sheet.sign.bend"),
    PRE_BEND("pb", "sheet.sign.prebend"),
    RELEASE("r", "sheet.sign.release"),
    TOUCH("at", "braille.word.touch"),
    FROM_BELOW("sib", "braille.word.from_below"),
    FROM_ABOVE("sia", "braille.word.from_above"),
    OFF_DOWN("sod", "braille.word.off_down"),
    OFF_UP("sou", "braille.word.off_up"),
    STRING("str", "braille.word.string");

    private final String letters;
    private final String meaning;

    BrailleWord(String letters, String meaning) {
        this.letters = letters;
        this.meaning = meaning;
    }

    Cells cells() {
        return BrailleSigns.WORD.plus(Cells.of(letters));
    }

    /** The key of its explanation. */
    String meaning() {
        return meaning;
    }

    /** Empty for the two strokes that have a sign. */
    static Optional<BrailleWord> of(Technique stroke) {
        return switch (stroke) {
            case SLAP -> Optional.of(SLAP);
            case POP -> Optional.of(POP);
            case THUMB -> Optional.of(THUMB);
            case FINGER -> Optional.of(FINGER);
            case INDEX -> Optional.of(INDEX);
            case MIDDLE -> Optional.of(MIDDLE);
            case THUMB_DOWN, THUMB_UP -> Optional.empty();
            case PICK -> Optional.of(PICK);
            case PLUCK -> Optional.of(PLUCK);
            case TAP -> Optional.of(TAP);
            case MUTE -> Optional.of(MUTE);
            case RAKE -> Optional.of(RAKE);
            case LEFT_HAND -> Optional.of(LEFT_HAND);
        };
    }

    static BrailleWord of(SlideIn in) {
        return switch (in) {
            case BELOW -> FROM_BELOW;
            case ABOVE -> FROM_ABOVE;
        };
    }

    static BrailleWord of(SlideOff off) {
        return switch (off) {
            case DOWN -> OFF_DOWN;
            case UP -> OFF_UP;
        };
    }
}
