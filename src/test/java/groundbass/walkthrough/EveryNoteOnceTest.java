package groundbass.walkthrough;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Passage;
import groundbass.score.Place.Fretted;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Over random lines: nothing left out, nothing told twice, nothing invented. The seed is named where one fails. */
class EveryNoteOnceTest {
    private static final int LINES = 60;
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);

    /** Each note is told with its place in brackets: {@code (E string, fret 5)}, {@code open E (E string)}. */
    private static final Pattern PLACE =
            Pattern.compile("(?:open \\S+(?: \\S+){0,2} )?\\((?:[A-G](?: sharp| flat)? string|string \\d+)[^)]*\\)");

    @Test
    void everyNoteOfABarIsToldOnceUnlessTheBarIsTheSameAsAnEarlierOne() {
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            var steps = Walkthrough.of(line, ENGLISH);
            for (int i = 0; i < line.bars().size(); i++) {
                int number = i + line.firstNumber();
                var told = told(steps, number);
                var expected = isSame(steps, number)
                        ? List.<String>of()
                        : places(line, line.bars().get(i));
                assertThat(told).as("seed %d, bar %d", seed, number).containsExactlyInAnyOrderElementsOf(expected);
            }
        }
    }

    @Test
    void aBarToldAsTheSameHasTheNotesOfTheBarItNames() {
        var same = Pattern.compile(": the same as (?:bar (\\d+)|the pickup)\\.$");
        int found = 0;
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            for (var step : Walkthrough.of(line, ENGLISH)) {
                var matcher = same.matcher(step.text());
                if (matcher.find()) {
                    int earlier = matcher.group(1) == null ? 0 : Integer.parseInt(matcher.group(1));
                    int number = step.passage().from().bar();
                    assertThat(earlier).as("seed %d", seed).isLessThan(number);
                    assertThat(line.bar(number).notes())
                            .as("seed %d", seed)
                            .isEqualTo(line.bar(earlier).notes());
                    found++;
                }
            }
        }
        assertThat(found).isPositive();
    }

    @Test
    void theStepsOfABarCoverItWithoutGaps() {
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            for (int i = 0; i < line.bars().size(); i++) {
                int number = i + line.firstNumber();
                var bar = line.bars().get(i);
                var passages = Walkthrough.of(line, ENGLISH).stream()
                        .skip(1)
                        .filter(step ->
                                step.text().startsWith("Bar ") || step.text().startsWith("Pickup"))
                        .map(Step::passage)
                        .filter(passage -> passage.from().bar() == number)
                        .toList();
                assertThat(passages.get(0).from().at()).as("seed %d", seed).isEqualTo(bar.from());
                for (int next = 1; next < passages.size(); next++) {
                    assertThat(passages.get(next).from())
                            .as("seed %d", seed)
                            .isEqualTo(passages.get(next - 1).to());
                }
                assertThat(passages.get(passages.size() - 1).to())
                        .as("seed %d", seed)
                        .isEqualTo(Passage.bar(number).to());
            }
        }
    }

    @Test
    void bothLanguagesTellTheSameSteps() {
        for (long seed = 0; seed < LINES; seed++) {
            var line = RandomLines.line(seed);
            var german = Walkthrough.of(line, Messages.of(Locale.GERMAN));
            assertThat(german.stream().map(Step::passage))
                    .as("seed %d", seed)
                    .isEqualTo(Walkthrough.of(line, ENGLISH).stream()
                            .map(Step::passage)
                            .toList());
            assertThat(german).as("seed %d", seed).noneMatch(step -> step.text()
                    .matches(".*(\\bfret\\b|string|\\{).*"));
        }
    }

    private static List<String> told(List<Step> steps, int number) {
        var told = new ArrayList<String>();
        steps.stream()
                .skip(1)
                .filter(step -> step.passage().from().bar() == number)
                .forEach(step -> PLACE.matcher(step.text()).results().forEach(match -> told.add(place(match.group()))));
        return told;
    }

    /** What is comparable: string, then open, the fret, or nothing of a dead note. */
    private static String place(String text) {
        String inside = text.substring(text.indexOf('(') + 1, text.length() - 1);
        return text.startsWith("open") ? inside + ", open" : inside;
    }

    private static boolean isSame(List<Step> steps, int number) {
        return steps.stream()
                .skip(1)
                .filter(step -> step.passage().equals(Passage.bar(number))
                        || step.passage().from().bar() == number)
                .anyMatch(step -> step.text().contains(": the same as "));
    }

    private static List<String> places(Line line, Bar bar) {
        return bar.notes().stream().map(note -> place(line, note)).toList();
    }

    private static String place(Line line, Note note) {
        var tuning = line.header().tuning();
        String name = tuning.string(note.string())
                .name()
                .toString()
                .replace("#", " sharp")
                .replace("b", " flat");
        String string = tuning.numberOf(tuning.string(note.string()).name()).isPresent()
                ? name + " string"
                : "string " + note.string();
        if (!(note.place() instanceof Fretted place)) {
            return string;
        }
        var harmonic = note.ornaments().harmonic();
        if (harmonic.isPresent()) {
            var touched = harmonic.get().touchedFret();
            return string
                    + (touched.isPresent()
                            ? ", fret " + place.fret() + ", touched at fret " + touched.getAsInt()
                            : ", touched at fret " + place.fret());
        }
        return string + (place.fret() == 0 ? ", open" : ", fret " + place.fret());
    }
}
