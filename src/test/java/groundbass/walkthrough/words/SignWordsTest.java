package groundbass.walkthrough.words;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class SignWordsTest {
    /** Educators' words hang on digests of these texts: another form of one would take the words off their signs. */
    @Test
    void whatASignIsCalledWhereWordsAreKeptStaysAsItIs() {
        assertThat(subjects("""
                        meter 4/4
                        tempo 100
                        strings E A D G

                        section Verse
                        repeat start
                        bar 1
                        1-4  E1

                        ending 1
                        bar 2
                        1-4  E3
                        ending end
                        repeat end

                        ending 2
                        key D major
                        tempo 80
                        feel swing 8ths 2:1 half-time
                        slowing to 60
                        bar 3
                        1-4  E5
                        ending end
                        """))
                .containsExactly(
                        "sign section Verse",
                        "sign repeat ",
                        "sign ending 1",
                        "sign back RepeatEnd[times=Optional.empty]",
                        "sign key D major",
                        "sign tempo Tempo[perMinute=80, beat=1/4]",
                        "sign feel swing 8ths 2:1 half-time",
                        "sign slowing Tempo[perMinute=60, beat=1/4]",
                        "sign ending 2");
    }

    private static List<String> subjects(String text) {
        var line = LineText.read(text).line();
        var words = new SignWords(new Wording(Messages.of(Locale.ENGLISH), Naming.USUAL), line);
        return IntStream.range(0, line.bars().size())
                .boxed()
                .flatMap(i -> Stream.concat(words.before(i).stream(), words.after(i).stream()))
                .map(SignWords.Sign::subject)
                .toList();
    }
}
