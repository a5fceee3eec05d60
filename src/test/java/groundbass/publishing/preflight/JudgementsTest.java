package groundbass.publishing.preflight;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.RevisionId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.PictureId;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.junit.jupiter.api.Test;

class JudgementsTest {
    private static final EpisodeId ONE = EpisodeId.next();
    private static final EpisodeId OTHER = EpisodeId.next();
    private static final Optional<RevisionId> DRAFT = Optional.empty();
    private static final Optional<RevisionId> FIXED = Optional.of(RevisionId.next());
    private static final Optional<RevisionId> FIXED_LATER = Optional.of(RevisionId.next());
    private static final EpisodeDocument DOCUMENT = EpisodeDocument.titled("Rope and Pulley", Level.BEGINNER);
    private static final EpisodeDocument LATER = EpisodeDocument.titled("Rope and Winch", Level.BEGINNER);
    private static final String SITE = "https://example.org";

    private final Judgements judgements = new Judgements();
    private int asked;

    private void judge(EpisodeId lesson, Optional<RevisionId> state, EpisodeDocument document, String site) {
        judge(lesson, state, document, site, Missing.NOTHING);
    }

    private void judge(
            EpisodeId lesson, Optional<RevisionId> state, EpisodeDocument document, String site, Missing missing) {
        judgements.of(lesson, state, document, site, missing, () -> {
            asked++;
            return List.of();
        });
    }

    @Test
    void aPictureThatComesOrGoesIsSeenThoughTheTextStays() {
        judge(ONE, FIXED, DOCUMENT, SITE);
        judge(ONE, FIXED, DOCUMENT, SITE, new Missing(Set.of(new PictureId("k3q8k3q8k3q8k3q8")), Set.of()));
        judge(ONE, FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(3);
    }

    @Test
    void aTextIsReadThroughAnewWhereItOrItsAddressIsAnother() {
        judge(ONE, FIXED, DOCUMENT, SITE);
        judge(ONE, FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(1);
        judge(ONE, DRAFT, LATER, SITE);
        judge(ONE, FIXED, DOCUMENT, SITE);
        assertThat(asked).as("a draft does not drive out what is fixed").isEqualTo(2);
        judge(ONE, FIXED, LATER, SITE);
        assertThat(asked).isEqualTo(3);
        judge(ONE, FIXED, LATER, "https://example.net");
        assertThat(asked).isEqualTo(4);
    }

    @Test
    void twoFixedStatesOfALessonDoNotDriveEachOtherOut() {
        for (int i = 0; i < 2; i++) {
            judge(ONE, FIXED, DOCUMENT, SITE);
            judge(ONE, FIXED_LATER, LATER, SITE);
        }
        assertThat(asked).isEqualTo(2);
    }

    @Test
    void lessonsThatAreNoLongerPromisedAreForgotten() {
        judge(ONE, FIXED, DOCUMENT, SITE);
        judge(OTHER, FIXED, DOCUMENT, SITE);
        judgements.keepOnly(Set.of(OTHER));
        judge(OTHER, FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(2);
        judge(ONE, FIXED, DOCUMENT, SITE);
        assertThat(asked).isEqualTo(3);
    }
}
