package groundbass.web.view;

import groundbass.score.Technique;
import groundbass.text.Message;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Line text's words for techniques, as a reader is told them. */
public final class TechniqueWords {
    private static final Set<String> KNOWN =
            Arrays.stream(Technique.values()).map(Technique::word).collect(Collectors.toUnmodifiableSet());

    private TechniqueWords() {}

    /** Each way of playing once; index and middle finger are both fingers, down and up both double thumbing. */
    public static List<String> of(List<String> words, Reader reader) {
        return List.copyOf(groups(words, reader).keySet());
    }

    /** The same, each with the words that it stands for. */
    public static Map<String, List<String>> groups(List<String> words, Reader reader) {
        return words.stream()
                .collect(Collectors.groupingBy(word -> name(word, reader), LinkedHashMap::new, Collectors.toList()));
    }

    private static String name(String word, Reader reader) {
        String family = family(word);
        return KNOWN.contains(family) ? reader.say(Message.of("student.technique." + family)) : family;
    }

    private static String family(String word) {
        return word.equals("i") || word.equals("m") ? "finger" : word;
    }
}
