package groundbass.script.captions;

import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Reads timed captions: WebVTT (W3C, "WebVTT: The Web Video Text Tracks Format") and SubRip, which differ in the header
 * and in how a time is written. Blocks are told apart by blank lines. What cannot be read is a problem and is left out.
 */
final class CaptionReader {
    private static final String ARROW = "-->";
    private static final Pattern SPACES = Pattern.compile("[ \\t]+");
    private static final Pattern TAGS = Pattern.compile("<[^>\\n]{0,200}>");
    private static final List<String> NOT_SPOKEN = List.of("NOTE", "STYLE", "REGION");
    static final int MOST_CUES = 20_000;
    private static final int MOST_PROBLEMS = 50;

    private final List<String> lines;
    private final List<Cue> cues = new ArrayList<>();
    private final List<Remark> problems = new ArrayList<>();

    private CaptionReader(String text) {
        this.lines = List.of(text.split("\\r\\n|\\n|\\r", -1));
    }

    record Read(List<Cue> cues, List<Remark> problems) {}

    static Read vtt(String text) {
        var reader = new CaptionReader(text);
        reader.blocks(reader.blockEnd(0));
        return new Read(reader.cues, reader.problems);
    }

    static Read subRip(String text) {
        var reader = new CaptionReader(text);
        reader.blocks(0);
        return new Read(reader.cues, reader.problems);
    }

    /** Whether the first line is that of a WebVTT file: the word alone, or followed by a space or tab. */
    static boolean isVtt(String text) {
        String first = text.split("\\r\\n|\\n|\\r", 2)[0];
        return first.equals("WEBVTT") || first.startsWith("WEBVTT ") || first.startsWith("WEBVTT\t");
    }

    /** Whether some line has the form of a SubRip timing. */
    static boolean isSubRip(String text) {
        return text.lines().limit(200).anyMatch(line -> line.matches("\\d{2}:\\d{2}:\\d{2}[,.]\\d{3} +--> +.{0,80}"));
    }

    private void blocks(int start) {
        int i = start;
        while (i < lines.size() && cues.size() < MOST_CUES) {
            if (lines.get(i).isBlank()) {
                i++;
            } else {
                int end = blockEnd(i);
                block(i, end);
                i = end;
            }
        }
    }

    /** A block ends at a blank line; an arrow in a later line than the second begins one too. */
    private int blockEnd(int from) {
        int i = from;
        while (i < lines.size() && !lines.get(i).isEmpty()) {
            boolean next = i > from + 1 && lines.get(i).contains(ARROW);
            if (next) {
                return i;
            }
            i++;
        }
        return i;
    }

    private void block(int from, int end) {
        boolean timed = lines.get(from).contains(ARROW);
        boolean named = !timed && from + 1 < end && lines.get(from + 1).contains(ARROW);
        if (timed || named) {
            cue(timed ? from : from + 1, end);
        } else if (NOT_SPOKEN.stream().noneMatch(lines.get(from)::startsWith)) {
            problem(from, "block", lines.get(from).strip());
        }
    }

    private void cue(int timing, int end) {
        String[] parts = lines.get(timing).split(ARROW, 2);
        String[] after = SPACES.split(parts[1].strip(), 2);
        var from = Timestamp.parse(parts[0].strip());
        var to = Timestamp.parse(after[0]);
        if (from.isEmpty() || to.isEmpty()) {
            problem(timing, "time", (from.isEmpty() ? parts[0] : after[0]).strip());
            return;
        }
        if (from.get() >= to.get()) {
            problem(timing, "backwards", lines.get(timing).strip());
            return;
        }
        if (cues.size() > 0 && from.get() < cues.get(cues.size() - 1).from()) {
            problem(timing, "order", parts[0].strip());
        }
        String text = plain(String.join(" ", lines.subList(timing + 1, end)));
        if (!text.isBlank()) {
            cues.add(new Cue(from.get(), to.get(), text));
        }
    }

    /** Without tags, and with WebVTT's escapes resolved. */
    private static String plain(String text) {
        return SPACES.matcher(TAGS.matcher(text)
                        .replaceAll("")
                        .replace("&lt;", "<")
                        .replace("&gt;", ">")
                        .replace("&nbsp;", " ")
                        .replace("&lrm;", "")
                        .replace("&rlm;", "")
                        .replace("&amp;", "&"))
                .replaceAll(" ")
                .strip();
    }

    private void problem(int line, String code, String found) {
        if (problems.size() < MOST_PROBLEMS) {
            var span = new Span(line + 1, 1, lines.get(line).length());
            problems.add(Remark.error(code, span, Message.of("script.problem." + code, shortened(found))));
        }
    }

    private static String shortened(String text) {
        return Optional.of(text).filter(all -> all.length() <= 60).orElseGet(() -> text.substring(0, 60) + "…");
    }
}
