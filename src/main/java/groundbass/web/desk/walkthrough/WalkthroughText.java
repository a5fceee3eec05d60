package groundbass.web.desk.walkthrough;

import groundbass.document.EpisodeDocument;
import groundbass.lesson.Lesson;
import groundbass.walkthrough.Retelling;
import groundbass.walkthrough.words.Naming;
import groundbass.web.desk.walkthrough.WalkthroughView.Part;
import groundbass.web.desk.walkthrough.WalkthroughView.Row;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/**
 * The walkthrough of a lesson with the educator's words in it.
 *
 * @param namings the names that musicians of the lesson's language may choose from; one where there is no choice
 */
public record WalkthroughText(String naming, List<String> namings, List<Part> parts) {
    static WalkthroughText of(EpisodeDocument document) {
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
        return new WalkthroughText(document.settings().naming(), namings, List.copyOf(parts));
    }

    private static Part part(Lesson lesson, int number) {
        var line = number == 0 ? lesson.main() : lesson.exercises().get(number - 1);
        Retelling retelling = lesson.walkthrough(number);
        var ids = new Ids(number);
        return new Part(
                number,
                line.header().title(),
                retelling.steps().stream()
                        .map(step -> new Row(
                                ids.next("said", step.told().anchor().own()),
                                step.told().anchor().toString(),
                                step.told().passage().from().bar(),
                                step.told().text(),
                                step.step().text()))
                        .toList(),
                retelling.lost().stream()
                        .map(lost -> new Row(
                                ids.next("lost", lost.anchor().own()),
                                lost.anchor().toString(),
                                lost.bar(),
                                "",
                                lost.sentence()))
                        .toList());
    }

    /** Names steps by what they tell, so that words find their step again where the line has changed. */
    private static final class Ids {
        private final int line;
        private final Map<String, Integer> used = new HashMap<>();

        Ids(int line) {
            this.line = line;
        }

        String next(String kind, String told) {
            String name = kind + "-" + line + "-" + told;
            return name + "-" + used.merge(name, 1, Integer::sum);
        }
    }
}
