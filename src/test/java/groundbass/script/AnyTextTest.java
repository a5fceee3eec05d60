package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import groundbass.script.captions.Script;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Whatever is pasted: an answer comes, and no statement lies outside the text. */
class AnyTextTest {
    private static final List<String> WORDS = List.of(
            ("bar beat the and of e a A one two 3 7th fret string strings E A D G B flat sharp natural open dead note hammer on pull off "
                            + "to from is same as octave up above first last two eighth sixteenth dotted rest quarter , . ; : ( ) ? ! not if "
                            + "but so that it which in on with together key minor dorian over Em7 4/4 bars fifth half 2& until only changes "
                            + "double middle finger third hundred twenty -- \n \n\n WEBVTT 00:01.000 --> 00:02.000 é 💡 ' \" # ♭")
                    .split(" "));

    @Test
    void randomWordsGetAnAnswer() {
        long seed = 77;
        System.out.println("seed " + seed);
        var random = new Random(seed);
        var line = FrozenSentencesTest.line("05-three-legged-gull");
        int statements = 0;
        for (int i = 0; i < 3000; i++) {
            var text = new StringBuilder();
            for (int word = random.nextInt(30); word >= 0; word--) {
                text.append(WORDS.get(random.nextInt(WORDS.size()))).append(random.nextInt(9) == 0 ? "" : " ");
            }
            var script = Script.read(text.toString());
            var read = Proofreading.of(script.spoken(), line, Locale.ENGLISH);
            assertThat(read.statements())
                    .as(text.toString())
                    .allMatch(statement -> statement.to() <= script.spoken().length());
            statements += read.statements().size();
        }
        assertThat(statements).as("seed " + seed).isGreaterThan(100);
    }

    /** Figures that no bass, bar or clock has, and zeros where something is counted, in every sentence that has a figure. */
    @Test
    void figuresThatCannotBeGetAnAnswer() {
        var line = FrozenSentencesTest.line("05-three-legged-gull");
        var sentences = List.of(
                "Play the %s fret, an E.",
                "The %s fret of the E string is an octave above the open E string.",
                "The %s fret of the A string is the octave of A.",
                "dead %s sixteenth",
                "In bar %s, play %s sixteenths on the E string.",
                "Beat %s of bar 1 is the %s fret on the A string, held for %s beats.",
                "The %s note of bar 1 is an A, with finger %s.",
                "The first %s notes of bar 2 are eighths.",
                "The last %s beats of bars 1 to %s rest.",
                "Bar %s is the same as bar %s, %s frets higher.",
                "It is in %s/4 at %s beats per minute, and has %s bars.",
                "Slide from the %s to the %s fret.");
        var figures = List.of(
                "0",
                "0th",
                "37",
                "37th",
                "41st",
                "99",
                "100th",
                "1000",
                "65536th",
                "2147483647",
                "9999999999th",
                "-1",
                "3.5");
        int read = 0;
        for (var language : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            for (String sentence : sentences) {
                for (String figure : figures) {
                    String text = sentence.replace("%s", figure);
                    assertThatCode(() -> Proofreading.of(text, line, language))
                            .as(text)
                            .doesNotThrowAnyException();
                    read++;
                }
            }
        }
        assertThat(read).isPositive();
    }

    /** Among them stands a sentence that can be read, so that there is something to be placed. */
    @Test
    void randomCharactersGetAnAnswer() {
        long seed = 78;
        System.out.println("seed " + seed);
        var random = new Random(seed);
        int statements = 0;
        var line = FrozenSentencesTest.line("06-last-lantern-home");
        for (int i = 0; i < 500; i++) {
            String text = characters(random) + "\nThe third fret of the E string is a G.\n" + characters(random);
            var found = Proofreading.of(Script.read(text).spoken(), line, Locale.ENGLISH)
                    .statements();
            assertThat(found).as(text).allMatch(statement -> statement.to() <= text.length());
            statements += found.size();
        }
        assertThat(statements).as("seed " + seed).isGreaterThan(400);
    }

    private static String characters(Random random) {
        return random.ints(random.nextInt(400), 1, 0x2FF)
                .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
                .toString();
    }

    @Test
    void oneEndlessSentenceGetsAnAnswer() {
        var line = FrozenSentencesTest.line("01-rope-and-pulley");
        String text = "bar one and the third fret of the E string to ".repeat(3000) + "first and ".repeat(3000);
        assertThat(Proofreading.of(text, line, Locale.ENGLISH).statements()).isNotEmpty();
    }
}
