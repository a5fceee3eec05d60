package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Line;
import groundbass.script.captions.Script;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Talk that runs on from sentence to sentence, where bars and notes are said once and meant for a while. */
class RunningTalkTest {
    private static final Line FERRY = FrozenSentencesTest.line("02-night-ferry");
    private static final String TALK = FrozenSentencesTest.text("talk-02.txt");

    @Test
    void aTalkThatIsRightFromEndToEndIsNotFlagged() {
        var read = Proofreading.of(TALK, FERRY, Locale.ENGLISH);
        assertThat(read.contradictions()).isEmpty();
        assertThat(read.agreeing() + read.readInPart()).isGreaterThan(25);
    }

    @Test
    void mistakesInItAreFoundWhereTheyAreSaid() {
        String wrong = TALK.replace("the octave, fifth fret of the D string", "the octave, sixth fret of the D string")
                .replace("There you hammer from F to G", "There you slide from F to G")
                .replace("It's a C.", "It's the D, third fret of the A string.");
        var read = Proofreading.of(wrong, FERRY, Locale.ENGLISH);
        assertThat(read.contradictions())
                .extracting(statement -> wrong.substring(statement.from(), statement.to()))
                .anyMatch(quote -> quote.contains("sixth fret"))
                .anyMatch(quote -> quote.contains("slide"))
                .anyMatch(quote -> quote.contains("third fret of the A string"));
    }

    /** As captions made by machines have it: small letters and not one mark. The lesson has five planted errors. */
    @Test
    void withoutPunctuationMostOfWhatIsPlantedIsFoundAndHardlyAnythingElse() {
        var line = FrozenSentencesTest.line("01-rope-and-pulley");
        String lesson = Script.read(FrozenSentencesTest.text("captions.vtt")).spoken();
        String bare = lesson.replaceAll("[.,:?!]", "").toLowerCase(Locale.ROOT).replaceAll("\\s+", " ");
        var planted = List.of(
                "that's an f sharp",
                "beat four of bar two is an eighth note on the open d string",
                "bar four is the same as bar three",
                "hammer to the eighth",
                "beat two of bar eight is just an eighth-note");
        var wrong = Proofreading.of(bare, line, Locale.ENGLISH).contradictions().stream()
                .map(statement -> bare.substring(statement.from(), statement.to()))
                .toList();
        var found = planted.stream()
                .filter(said -> wrong.stream().anyMatch(quote -> quote.startsWith(said) || said.startsWith(quote)))
                .toList();
        assertThat(found).as("%s", wrong).hasSizeGreaterThanOrEqualTo(4);
        assertThat(wrong).hasSizeLessThanOrEqualTo(found.size() + 1);
    }

    @Test
    void aPlaceWithAWrongNameIsFoundWithoutPunctuation() {
        String wrong = "the third fret of the a string is a d you know " + "and so we play on and on ".repeat(20);
        assertThat(Proofreading.of(wrong, FERRY, Locale.ENGLISH).contradictions())
                .hasSize(1);
    }
}
