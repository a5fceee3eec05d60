package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.script.captions.Script;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Captions as a machine makes them: small letters, no marks, cut after so many words, wherever a sentence ends. What is
 * said in them is right: the walkthrough of a line, and free talk about it, written from the line alone. So whatever is
 * called wrong is a false alarm: one statement of free talk may be one, and four of a walkthrough.
 */
class MachineCaptionsTest {
    private static final int WORDS_IN_A_CUE = 7;
    private static final int MILLISECONDS_A_WORD = 380; // about 160 words a minute

    /** Of 47 to 63 statements; three in a hundred are aimed at. */
    private static final int MOST_OF_A_WALKTHROUGH = 4;

    @ParameterizedTest
    @CsvSource({
        "02-night-ferry, en",
        "02-night-ferry, en-GB",
        "02-night-ferry, de",
        "06-last-lantern-home, en",
        "06-last-lantern-home, en-GB",
        "06-last-lantern-home, de"
    })
    void ofAWalkthroughHardlyAnythingIsCalledWrong(String line, String language) {
        var locale = Locale.forLanguageTag(language);
        String told = Walkthrough.of(FrozenSentencesTest.line(line), Messages.of(locale)).stream()
                .map(step -> step.text())
                .collect(Collectors.joining(" "));
        assertThat(alarms(captions(told, locale), line, locale)).hasSizeLessThanOrEqualTo(MOST_OF_A_WALKTHROUGH);
    }

    @ParameterizedTest
    @CsvSource({"02-night-ferry, free-talk-02.txt", "06-last-lantern-home, free-talk-06.txt"})
    void ofFreeTalkHardlyAnythingIsCalledWrong(String line, String talk) {
        String captions = captions(FrozenSentencesTest.text(talk), Locale.ENGLISH);
        assertThat(alarms(captions, line, Locale.ENGLISH)).hasSizeLessThanOrEqualTo(1);
    }

    /** What is called wrong, of more than twenty statements. */
    private static List<String> alarms(String captions, String line, Locale language) {
        String spoken = Script.read(captions).spoken();
        var read = Proofreading.of(spoken, FrozenSentencesTest.line(line), language);
        var alarms = read.contradictions().stream()
                .map(wrong -> spoken.substring(wrong.from(), wrong.to()) + " " + wrong.verdict())
                .toList();
        System.out.println(line + " " + language + ": called wrong " + alarms.size() + " of "
                + read.statements().size() + ", agree " + read.agreeing() + ", in part " + read.readInPart() + " "
                + alarms);
        assertThat(read.statements()).hasSizeGreaterThan(20);
        return alarms;
    }

    static String captions(String told, Locale language) {
        String words = told.toLowerCase(language).replaceAll("[^\\p{L}\\p{N}'’ \\n#♯♭/-]", "");
        var cues = new ArrayList<String>();
        var all = List.of(words.strip().split("\\s+"));
        for (int i = 0; i < all.size(); i += WORDS_IN_A_CUE) {
            int end = Math.min(all.size(), i + WORDS_IN_A_CUE);
            cues.add(time(i) + " --> " + time(end) + "\n" + String.join(" ", all.subList(i, end)));
        }
        return "WEBVTT\n\n" + String.join("\n\n", cues) + "\n";
    }

    private static String time(int words) {
        return groundbass.script.captions.Timestamp.print((long) words * MILLISECONDS_A_WORD);
    }
}
