package groundbass.braille;

import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What the music uses beyond the tables of the codes, told once before it begins. Mutable; one for a line.
 * rule: braille-words-of-ours
 */
final class BrailleKey {
    private static final int LAST_FRET_OF_THE_TABLE = 12;

    private final Messages messages;
    private final Literary literary;
    private final Map<Cells, String> meanings = new LinkedHashMap<>();

    BrailleKey(Messages messages) {
        this.messages = messages;
        this.literary = Literary.of(messages.locale());
    }

    String say(String key, Object... figures) {
        return messages.say(key, figures);
    }

    Literary literary() {
        return literary;
    }

    Cells use(BrailleWord word) {
        meanings.putIfAbsent(word.cells(), messages.say(word.meaning()));
        return word.cells();
    }

    /** A word with a figure behind it. */
    Cells use(BrailleWord word, String figure) {
        return use(word).plus(literary.cells(figure));
    }

    /** @param meaning the key of its explanation, with what stands in it */
    Cells use(Cells sign, String meaning, Object... figures) {
        meanings.putIfAbsent(sign, messages.say(meaning, figures));
        return sign;
    }

    Cells fret(int fret) {
        var sign = BrailleSigns.fret(fret);
        return fret > LAST_FRET_OF_THE_TABLE ? use(sign, "braille.sign.fret", fret) : sign;
    }

    /** The table ends with the seventh string. */
    Cells string(int number) {
        return BrailleSigns.string(number)
                .orElseGet(() -> use(BrailleWord.STRING, String.valueOf(number)).plus(Cells.DOT_3));
    }

    /** A sign, two blanks, its meaning; what does not fit goes on in the third cell. */
    List<Cells> rows() {
        var rows = new ArrayList<Cells>();
        meanings.forEach((sign, meaning) -> {
            var words = new ArrayList<Cells>();
            words.add(sign.plus(Cells.BLANK));
            for (String word : meaning.split(" ")) {
                words.add(literary.cells(word));
            }
            rows.addAll(Rows.hanging(words));
        });
        return rows;
    }
}
