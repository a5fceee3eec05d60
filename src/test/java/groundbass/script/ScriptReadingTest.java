package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.script.captions.Cue;
import groundbass.script.captions.Script;
import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Captions as the W3C's "WebVTT: The Web Video Text Tracks Format" shows them (introduction and section on the file
 * format; shortened, from memory where not quoted), and SubRip as its writers use it (common practice, no source).
 */
class ScriptReadingTest {
    /**
     * In the form of the example in section 1.1 of the standard, with words of ours: comments, identifiers, settings,
     * voices and markup.
     */
    private static final String STANDARD = """
            WEBVTT

            NOTE
            This is a comment
            over two lines

            STYLE
            ::cue { color: lime; }

            1
            00:11.000 --> 00:13.000 align:left size:50%
            <v Mara Quill>We are in <i>Saltlantern</i> Harbour

            00:13.000 --> 00:16.000
            <v Mara Quill>We're actually at the Rope Loft,
            just down the street

            123
            01:00:16.000 --> 01:00:18.000
            from the Lamp Museum &amp; <00:17.000>co &lt;b&gt;
            """;

    @Test
    void readsCuesWithTheirTimesAndPlainText() {
        var script = Script.read(STANDARD);
        assertThat(script.kind()).isEqualTo(Script.Kind.WEBVTT);
        assertThat(script.problems()).isEmpty();
        assertThat(script.cues())
                .containsExactly(
                        new Cue(11_000, 13_000, "We are in Saltlantern Harbour"),
                        new Cue(13_000, 16_000, "We're actually at the Rope Loft, just down the street"),
                        new Cue(3_616_000, 3_618_000, "from the Lamp Museum & co <b>"));
    }

    @Test
    void theTextRunsOnAndEveryCharacterHasItsTime() {
        var script = Script.read(STANDARD);
        assertThat(script.timeAt(0)).hasValue(11_000);
        assertThat(script.timeAt(script.spoken().indexOf("just down"))).hasValue(13_000);
        assertThat(script.timeAt(script.spoken().length() - 1)).hasValue(3_616_000);
    }

    /** "An optional U+FEFF", "WEBVTT", then a space, a tab or the line's end; lines end with CR, LF or both. */
    @Test
    void theSignatureMayHaveAByteOrderMarkAndWordsBehindIt() {
        assertThat(Script.read("\uFEFFWEBVTT - spoken\r\n\r\n00:01.000 --> 00:02.000\r\nHello\r\n")
                        .cues())
                .containsExactly(new Cue(1000, 2000, "Hello"));
        assertThat(Script.read("WEBVTTX\n\n00:01.000 --> 00:02.000\nHello\n").kind())
                .isEqualTo(Script.Kind.TEXT);
    }

    @Test
    void readsSubRip() {
        var script =
                Script.read("1\n00:00:01,500 --> 00:00:02,000\nOne\nline\n\n2\n00:00:03,000 --> 00:00:04,000\nTwo\n");
        assertThat(script.kind()).isEqualTo(Script.Kind.SUBRIP);
        assertThat(script.cues()).containsExactly(new Cue(1500, 2000, "One line"), new Cue(3000, 4000, "Two"));
        assertThat(script.problems()).isEmpty();
    }

    @Test
    void whatCannotBeReadIsToldByItsLineAndTheRestIsKept() {
        var script = Script.read("WEBVTT\n\n00:1.000 --> 00:02.000\nA\n\n00:05.000 --> 00:04.000\nB\n\nstray\n\n"
                + "00:06.000 --> 00:07.000\nC\n");
        assertThat(script.cues()).extracting(Cue::text).containsExactly("C");
        assertThat(script.problems())
                .extracting(problem -> problem.span().line())
                .containsExactly(3, 6, 9);
        assertThat(script.problems())
                .extracting(problem -> problem.message().key())
                .containsExactly("script.problem.time", "script.problem.backwards", "script.problem.block");
    }

    @Test
    void plainTextIsTakenAsItIs() {
        assertThat(Script.read("Bar one.").spoken()).isEqualTo("Bar one.");
        assertThat(Script.read("Bar one.").isTimed()).isFalse();
    }

    @Test
    void chaptersAreReadFromAListOfTimesAndWrittenForPlayers() {
        var listed = Chapters.read("1:05 Bar 3 & 4\n0:00 Start\nno time\n1:02:03 Late\n\n");
        assertThat(listed.problems()).containsExactly(3);
        assertThat(Chapters.list(listed.chapters())).isEqualTo("0:00 Start\n1:05 Bar 3 & 4\n1:02:03 Late\n");
        String vtt = Chapters.webVtt(listed.chapters(), 4_000_000);
        assertThat(vtt).startsWith("WEBVTT\n\n00:00:00.000 --> 00:01:05.000\nStart\n");
        assertThat(Script.read(vtt).cues())
                .containsExactly(
                        new Cue(0, 65_000, "Start"),
                        new Cue(65_000, 3_723_000, "Bar 3 & 4"),
                        new Cue(3_723_000, 4_000_000, "Late"));
    }

    @Test
    void aStatementMayRunAcrossCues() {
        var script = Script.read("WEBVTT\n\n00:01.000 --> 00:02.000\nThe third fret\n\n"
                + "00:02.000 --> 00:03.000\nof the A string is a D.\n");
        var line = FrozenSentencesTest.line("01-rope-and-pulley");
        var wrong =
                Proofreading.of(script.spoken(), line, java.util.Locale.ENGLISH).contradictions();
        assertThat(wrong).hasSize(1);
        assertThat(script.timeAt(wrong.get(0).from())).hasValue(1000);
        assertThat(List.of(wrong.get(0).to()))
                .isNotEmpty()
                .allMatch(to -> to <= script.spoken().length());
    }
}
