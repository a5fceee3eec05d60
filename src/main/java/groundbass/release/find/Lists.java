package groundbass.release.find;

import java.util.Collection;
import java.util.List;
import java.util.stream.Stream;

/** Lists of words as a column holds them: a space before and after each, so that a word's beginning can be looked for. */
final class Lists {
    private Lists() {}

    static String join(Collection<String> words) {
        return words.isEmpty() ? " " : " " + String.join(" ", words) + " ";
    }

    static List<String> split(String column) {
        return Stream.of(column.split(" ")).filter(word -> !word.isEmpty()).toList();
    }
}
