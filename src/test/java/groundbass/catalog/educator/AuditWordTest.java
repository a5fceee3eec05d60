package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.ResourceBundle;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class AuditWordTest {
    /** Texts below {@code audit.} that are of somebody or of what an entry is about, not of what was done. */
    private static final String OTHERS = "audit\\.(who|detail)\\..*";

    /** That both languages have the same keys is MessagesTest's. */
    @Test
    void everyWordHasATextAndEveryTextAWord() {
        var texts = ResourceBundle.getBundle("groundbass.messages", Locale.ROOT).keySet().stream()
                .filter(key -> key.startsWith("audit.") && !key.matches(OTHERS))
                .collect(Collectors.toSet());
        var words = Stream.of(AuditWord.values())
                .map(word -> AuditWord.key(word.value()))
                .toList();
        assertThat(words).doesNotHaveDuplicates();
        assertThat(texts).containsExactlyInAnyOrderElementsOf(words);
    }
}
