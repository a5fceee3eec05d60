package groundbass.web.student;

import groundbass.score.Technique;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;

/** Line text's words for techniques, as a reader is told them. */
final class TechniqueWords {
    private static final Set<String> KNOWN =
            Arrays.stream(Technique.values()).map(Technique::word).collect(Collectors.toUnmodifiableSet());

    private TechniqueWords() {}

    /** Each way of playing once; index and middle finger are both fingers, down and up both double thumbing. */
    static List<String> of(List<String> words, Reader reader) {
        return words.stream()
                .map(TechniqueWords::family)
                .distinct()
                .map(word -> KNOWN.contains(word) ? reader.say(Message.of("student.technique." + word)) : word)
                .distinct()
                .toList();
    }

    private static String family(String word) {
        return word.equals("i") || word.equals("m") ? "finger" : word;
    }
}
