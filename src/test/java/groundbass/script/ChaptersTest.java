package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Line;
import groundbass.script.captions.Script;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Which parts of a lesson's video are proposed as chapters, and where they begin. */
class ChaptersTest {
    private static final Line FERRY = FrozenSentencesTest.line("02-night-ferry");

    /** Cues of five seconds, one for each of these. */
    private static Script script(String... cues) {
        var text = new StringBuilder("WEBVTT\n");
        for (int i = 0; i < cues.length; i++) {
            text.append("\n%02d:%02d.000 --> %02d:%02d.000%n"
                            .formatted(i * 5 / 60, i * 5 % 60, (i * 5 + 5) / 60, (i * 5 + 5) % 60))
                    .append(cues[i])
                    .append('\n');
        }
        return Script.read(text.toString());
    }

    private static List<String> chapters(Locale language, String... cues) {
        return Chapters.propose(script(cues), FERRY, language, Messages.of(language)).stream()
                .map(chapter -> chapter.time() + " " + chapter.title())
                .toList();
    }

    @Test
    void anOverviewMakesNoBarUnreachable() {
        assertThat(chapters(
                        Locale.ENGLISH,
                        "Hello, this is Night Ferry. Bar three is bar one again, and so is bar seven.",
                        "So there are six bars to learn, and that's not much at all.",
                        "Let's start with bar one. You play the third fret of the E string.",
                        "Then a dead note on the same string, and take your time with it.",
                        "Bar two is over C nine, and your hand moves over one string.",
                        "It's the third fret of the A string, and it's an eighth note as well.",
                        "In bar three you hammer from F to G, and that's the only thing that is new.",
                        "And finish on the fifth fret of the A string."))
                .containsExactly("0:00 Introduction", "0:10 Bar 1", "0:20 Bar 2", "0:30 Bar 3");
    }

    @Test
    void theLastBarIsABarOfItsOwn() {
        assertThat(chapters(
                        Locale.ENGLISH,
                        "Bar one starts on the third fret of the E string, and it goes on from there.",
                        "It comes back at the end of the beat, and you can take it slowly.",
                        "And in the last bar there are two notes at once, so pluck them with two fingers."))
                .containsExactly("0:00 Bar 1", "0:10 Bar 8");
    }

    @Test
    void aBarThatSomethingIsComparedWithIsNoTurn() {
        assertThat(chapters(
                        Locale.ENGLISH,
                        "Bar one starts on the third fret of the E string, and you'll hear it again.",
                        "It's just like bar seven, so learn it well. And we hammer later, in bar three.",
                        "Bar two starts on the third fret of the A string, one string over."))
                .containsExactly("0:00 Bar 1", "0:10 Bar 2");
    }

    /** A sentence that goes on for long is no unit of what a speaker turns to. */
    @Test
    void aChapterBeginsWhereThePhraseBegins() {
        assertThat(chapters(
                        Locale.ENGLISH,
                        "so bar one you start on the third fret of the e string and there's",
                        "a dead note after that and then the g again and you want to take it",
                        "really slowly at first until it sits and that's the whole of it",
                        "okay now bar two starts on the third fret of the a string and then",
                        "there's a dead note and the c again and the octave is on the g string"))
                .containsExactly("0:00 Bar 1", "0:15 Bar 2");
    }

    @Test
    void inGermanToo() {
        assertThat(chapters(
                        Locale.GERMAN,
                        "Takt drei ist wieder Takt eins, das nur vorweg, und Takt sieben auch.",
                        "Im ersten Takt beginnst du im dritten Bund auf der E-Saite, ganz entspannt.",
                        "Das G kommt danach noch einmal, und dann wartest du auf die Zwei.",
                        "Takt zwei beginnt im dritten Bund auf der A-Saite, sonst ist alles gleich.",
                        "Lass dir Zeit damit, das muss erst einmal sitzen, ohne jede Eile.",
                        "Und im letzten Takt spielst du zwei Töne zugleich."))
                .containsExactly("0:00 Einleitung", "0:05 Takt 1", "0:15 Takt 2", "0:25 Takt 8");
    }
}
