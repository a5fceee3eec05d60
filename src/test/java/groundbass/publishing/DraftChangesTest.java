package groundbass.publishing;

import static groundbass.publishing.Studio.LINE;
import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.Clearance;
import groundbass.document.DocumentEdit;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.publishing.preflight.Difference;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DraftChangesTest {
    private static final String LATER = "bar 1\n1-4 E7\n";
    private static final UnaryOperator<DocumentEdit> PITCH = edit -> edit.mainLine(new LineSource("", LATER));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDraftIsComparedWithWhatReadersSeeOrWithTheCorrectionOnItsWay(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            assertThat(DraftChanges.of(studio.look(id))).as("nothing is out").isEmpty();
            done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(DraftChanges.of(studio.look(id))).isEmpty();

            studio.write(id, LATER);
            assertThat(DraftChanges.of(studio.look(id)))
                    .contains(new Difference(
                            1, true, DocumentComparison.clauses(document(edit -> edit), document(PITCH))));
            done(studio.correct(id));
            assertThat(DraftChanges.of(studio.look(id))).as("it is on its way").isEmpty();
            studio.write(id, LINE);
            assertThat(DraftChanges.of(studio.look(id))).hasValueSatisfying(difference -> {
                assertThat(difference.release()).isEqualTo(2);
                assertThat(difference.out()).isFalse();
            });
        }
    }

    @Test
    void linesAreToldByBarsAndEverythingElseByName() {
        var before = document(edit -> edit.exercises(List.of(new LineSource("", LINE), new LineSource("", LINE))));
        var after = document(edit -> PITCH.apply(edit)
                .exercises(List.of(new LineSource("", LINE), new LineSource("", LATER)))
                .notes("Mind the tide.")
                .rights(new Rights("Somebody", "", "Own work.", Clearance.OWN)));
        assertThat(said(DocumentComparison.clauses(before, after)))
                .containsExactly(
                        "bar 1: count 1 (pitch)",
                        "exercise 2, bar 1: count 1 (pitch)",
                        "notes",
                        "credits and rights line");
    }

    @Test
    void whatReadersDoNotSeeIsNoDifference() {
        var before = document(edit -> edit);
        var after = document(edit -> edit.script("Listen to this one.")
                .mainLine(new LineSource("", "bar 1\n\n1-4   E5\n"))
                .rights(new Rights("", "", "Own work.", Clearance.GIVEN)));
        assertThat(DocumentComparison.clauses(before, after)).isEmpty();
        assertThat(said(DocumentComparison.onTheDesk(before, after)))
                .containsExactly("script", "whether it may be published");
    }

    @Test
    void whatStandsBesideTheLinesIsToldAlone() {
        var after = document(edit -> PITCH.apply(edit).notes("Mind the tide.").script("Listen."));
        assertThat(said(DocumentComparison.besideTheLines(document(edit -> edit), after)))
                .containsExactly("notes", "script");
    }

    @Test
    void exercisesThatCameOrWentAreOneDifference() {
        var more = document(edit -> edit.exercises(List.of(new LineSource("", LINE))));
        assertThat(said(DocumentComparison.clauses(document(edit -> edit), more)))
                .containsExactly("exercises");
    }

    private static List<String> said(List<Message> clauses) {
        return clauses.stream().map(Messages.of(Locale.ENGLISH)::say).toList();
    }

    private static EpisodeDocument document(UnaryOperator<DocumentEdit> change) {
        var sound = EpisodeDocument.titled("Rope and Pulley", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", LINE))
                .rights(new Rights("", "", "Own work.", Clearance.OWN));
        return change.apply(sound).done();
    }
}
