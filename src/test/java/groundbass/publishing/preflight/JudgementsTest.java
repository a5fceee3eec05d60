package groundbass.publishing.preflight;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.publishing.preflight.Judgements.Text;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class JudgementsTest {
    private static final EpisodeId ONE = EpisodeId.next();
    private static final EpisodeId OTHER = EpisodeId.next();
    private static final EpisodeDocument DOCUMENT = EpisodeDocument.titled("Rope and Pulley", Level.BEGINNER);
    private static final EpisodeDocument LATER = EpisodeDocument.titled("Rope and Winch", Level.BEGINNER);
    private static final String SITE = "https://example.org";

    private final Judgements judgements = new Judgements();
    private int asked;

    private void judge(EpisodeId lesson, Text text, EpisodeDocument document, String site) {
        judgements.of(lesson, text, document, site, () -> {
            asked++;
            return List.of();
        });
    }

    @Test
    void aTextIsReadThroughAnewWhereItOrItsAddressIsAnother() {
        judge(ONE, Text.FIXED, DOCUMENT, SITE);
        judge(ONE, Text.FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(1);
        judge(ONE, Text.DRAFT, LATER, SITE);
        judge(ONE, Text.FIXED, DOCUMENT, SITE);
        assertThat(asked).as("a draft does not drive out what is fixed").isEqualTo(2);
        judge(ONE, Text.FIXED, LATER, SITE);
        assertThat(asked).isEqualTo(3);
        judge(ONE, Text.FIXED, LATER, "https://example.net");
        assertThat(asked).isEqualTo(4);
    }

    @Test
    void lessonsThatAreNoLongerPromisedAreForgotten() {
        judge(ONE, Text.FIXED, DOCUMENT, SITE);
        judge(OTHER, Text.FIXED, DOCUMENT, SITE);
        judgements.keepOnly(Set.of(OTHER));
        judge(OTHER, Text.FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(2);
        judge(ONE, Text.FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(3);
    }
}
