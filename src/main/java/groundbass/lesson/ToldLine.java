package groundbass.lesson;

import groundbass.engraving.sheet.TextPart;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.walkthrough.Step;
import groundbass.walkthrough.Walkthrough;
import groundbass.walkthrough.words.UnderHeading;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;

/**
 * A line and its walkthrough.
 *
 * @param steps the first one of the line as a whole
 */
public record ToldLine(Line line, List<Step> steps) {
    public ToldLine {
        steps = List.copyOf(steps);
    }

    /** Told by the program, in nobody else's words. */
    static ToldLine of(Line line, Messages messages) {
        return new ToldLine(line, Walkthrough.of(line, messages));
    }

    /** The walkthrough as it is printed: bar by bar. */
    TextPart chapter(String heading, Messages messages) {
        var bars = new LinkedHashMap<Integer, List<String>>();
        for (var step : steps.subList(1, steps.size())) {
            int bar = step.passage().from().bar();
            bars.computeIfAbsent(bar, number -> new ArrayList<>()).add(UnderHeading.text(messages, bar, step.text()));
        }
        var entries = bars.entrySet().stream()
                .map(bar -> new TextPart.Entry(UnderHeading.name(messages, bar.getKey()), bar.getValue()))
                .toList();
        return new TextPart(heading, steps.get(0).text(), entries);
    }
}
