package groundbass.script;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.script.checking.Verdict;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The walkthrough and the proofreader say the same of a line. Both are ours: one of them wrong alone is seen, both
 * alike not.
 */
class WalkthroughAgreesTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "01-rope-and-pulley",
                "02-night-ferry",
                "03-slow-tide",
                "04-below-the-waterline",
                "05-three-legged-gull",
                "06-last-lantern-home"
            })
    void whatIsToldFromTheLineIsNeverCalledWrong(String folder) {
        var line = FrozenSentencesTest.line(folder);
        String told = told(line);
        var read = Proofreading.of(told, line, Locale.ENGLISH);
        var words = new RightWords(Messages.of(Locale.ENGLISH), line.header().tuning());
        var wrong = read.contradictions().stream()
                .map(statement -> told.substring(Math.max(0, statement.from() - 60), statement.from()) + " [["
                        + told.substring(statement.from(), statement.to()) + "]] "
                        + words.of(((Verdict.Contradicts) statement.verdict()).right()))
                .toList();
        System.out.println(folder + ": " + read.statements().size() + " statements, " + read.agreeing() + " agree");
        assertEquals(List.of(), wrong);
        assertTrue(read.agreeing() + read.readInPart() > 20, folder);
    }

    @ParameterizedTest
    @ValueSource(strings = {"01-rope-and-pulley", "02-night-ferry", "04-below-the-waterline", "05-three-legged-gull"})
    void aLineToldWithOneFretWrongIsCaughtNineTimesInTen(String folder) {
        long seed = 20261125;
        var random = new Random(seed);
        var line = FrozenSentencesTest.line(folder);
        int tries = 40;
        int caught = 0;
        for (int i = 0; i < tries; i++) {
            String told = told(mistaken(line, random));
            caught +=
                    Proofreading.of(told, line, Locale.ENGLISH).contradictions().isEmpty() ? 0 : 1;
        }
        System.out.println(folder + ": caught " + caught + " of " + tries + ", seed " + seed);
        assertTrue(caught * 10 >= tries * 9, folder + ": " + caught);
    }

    /** The same line with one note a fret higher. */
    private static Line mistaken(Line line, Random random) {
        var bars = new ArrayList<>(line.bars());
        while (true) {
            int bar = random.nextInt(bars.size());
            var notes = new ArrayList<>(bars.get(bar).notes());
            int index = notes.isEmpty() ? -1 : random.nextInt(notes.size());
            if (index >= 0 && notes.get(index).place() instanceof Fretted place && place.fret() > 0) {
                var note = notes.get(index);
                notes.set(
                        index,
                        new Note(
                                note.onset(),
                                note.length(),
                                new Fretted(place.string(), place.fret() + 1),
                                note.pluck(),
                                note.arrival(),
                                note.ornaments()));
                bars.set(bar, bars.get(bar).withNotes(notes));
                return new Line(line.header(), bars);
            }
        }
    }

    private static String told(Line line) {
        return Walkthrough.of(line, Messages.of(Locale.ENGLISH)).stream()
                .map(step -> step.text())
                .collect(Collectors.joining("\n\n"));
    }
}
