package groundbass.script;

import static org.junit.jupiter.api.Assertions.assertEquals;

import groundbass.script.captions.Script;
import groundbass.script.captions.Timestamp;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** A spoken lesson on line 01 with five planted errors (see its README). */
class FrozenCaptionsTest {
    private final Script script = Script.read(FrozenSentencesTest.text("captions.vtt"));
    private final Proofreading read =
            Proofreading.of(script.spoken(), FrozenSentencesTest.line("01-rope-and-pulley"), Locale.ENGLISH);

    @Test
    void findsEachPlantedErrorWhereItIsSaidAndNothingElse() {
        var planted = FrozenSentencesTest.text("captions-errors.txt")
                .lines()
                .map(row -> row.split("\t"))
                .map(cells -> cells[1].split(" --> "))
                .map(times -> Timestamp.parse(times[0]).orElseThrow() + ".."
                        + Timestamp.parse(times[1]).orElseThrow())
                .toList();
        var found = new ArrayList<String>();
        for (var wrong : read.contradictions()) {
            long at = script.timeAt(wrong.from()).orElseThrow();
            long until = script.cues().stream()
                    .filter(cue -> cue.from() == at)
                    .findFirst()
                    .orElseThrow()
                    .to();
            found.add(at + ".." + until);
            System.out.println(Timestamp.print(at) + " " + script.spoken().substring(wrong.from(), wrong.to()) + " "
                    + wrong.verdict());
        }
        System.out.println(read.statements().size() + " statements, " + read.agreeing() + " agree, " + read.untold()
                + " cannot be told");
        assertEquals(planted, found.stream().distinct().toList());
    }

    @Test
    void proposesAChapterForEachBarAndForTheWholeLine() {
        var messages = groundbass.text.Messages.of(Locale.ENGLISH);
        var chapters =
                Chapters.propose(script, FrozenSentencesTest.line("01-rope-and-pulley"), Locale.ENGLISH, messages);
        System.out.println(Chapters.list(chapters));
        assertEquals(
                List.of(
                        "Introduction",
                        "Bar 1",
                        "Bar 2",
                        "Bar 3",
                        "Bar 4",
                        "Bar 5",
                        "Bar 6",
                        "Bar 7",
                        "Bar 8",
                        "The whole line, slowly",
                        "The whole line at full speed"),
                chapters.stream().map(Chapter::title).collect(Collectors.toList()));
    }
}
