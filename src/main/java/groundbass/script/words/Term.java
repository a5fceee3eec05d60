package groundbass.script.words;

import java.util.Map;

/**
 * One word or phrase with all it may stand for; a sense may carry a value, such as a number.
 *
 * @param raw the first word as it stands
 * @param from offset of its first character
 * @param to offset after its last
 */
public record Term(Map<Sense, String> senses, String raw, int from, int to) {
    boolean is(Sense sense) {
        return senses.containsKey(sense);
    }

    public String value(Sense sense) {
        return senses.getOrDefault(sense, "");
    }

    public int number(Sense sense) {
        return Integer.parseInt(value(sense));
    }
}
