package groundbass.web.desk.walkthrough;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.lesson.Lesson;
import groundbass.walkthrough.Naming;
import groundbass.walkthrough.Retelling;
import groundbass.walkthrough.Retelling.Edit;
import groundbass.walkthrough.Retelling.Retold;
import groundbass.web.desk.access.DeskContext;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;

/**
 * The walkthrough of an episode, to be read and reworded.
 *
 * @param path     of the episode on the desk
 * @param conflict whether another window saved in the meantime
 * @param namings  the names that musicians of the lesson's language may choose from; one where there is no choice
 */
public record WalkthroughView(
        String path, String title, int base, boolean conflict, String naming, List<String> namings, List<Part> parts) {
    /** One line of the episode; {@code number} is 0 for the main one. */
    public record Part(int number, String title, List<Row> steps, List<Row> lost) {}

    /**
     * A step.
     *
     * @param told  what the program says; empty where its notes are no longer there
     * @param said  what is read: the educator's words where there are any
     */
    public record Row(String anchor, int bar, String told, String said) {
        public boolean isEdited() {
            return !told.equals(said);
        }
    }

    static WalkthroughView of(Episode episode, int base, EpisodeDocument document, boolean conflict) {
        var lesson = Lesson.of(document);
        var parts = new ArrayList<Part>();
        for (int i = 0; i <= lesson.exercises().size(); i++) {
            parts.add(part(lesson, i));
        }
        var locale = Locale.forLanguageTag(document.settings().language());
        var namings = Arrays.stream(Naming.values())
                .filter(naming -> naming.isSpokenIn(locale))
                .map(Naming::word)
                .toList();
        return new WalkthroughView(
                DeskContext.path(episode),
                document.title(),
                base,
                conflict,
                document.settings().naming(),
                namings,
                parts);
    }

    private static Part part(Lesson lesson, int number) {
        var line = number == 0 ? lesson.main() : lesson.exercises().get(number - 1);
        Retelling retelling = lesson.walkthrough(number);
        return new Part(
                number,
                line.header().title(),
                retelling.steps().stream().map(WalkthroughView::row).toList(),
                retelling.lost().stream().map(WalkthroughView::row).toList());
    }

    private static Row row(Retold step) {
        var told = step.told();
        return new Row(
                told.anchor().toString(),
                told.passage().from().bar(),
                told.text(),
                step.step().text());
    }

    private static Row row(Edit lost) {
        return new Row(lost.anchor().toString(), lost.bar(), "", lost.sentence());
    }
}
