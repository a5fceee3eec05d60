package groundbass.script.captions;

import groundbass.remark.Remark;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalLong;

/**
 * What is said in a lesson: plain text, or timed captions whose text runs on from cue to cue.
 *
 * @param kind how it was written
 * @param spoken the words alone
 * @param cues in order; empty for plain text
 * @param starts for each cue, where its text begins in {@code spoken}
 * @param problems what could not be read
 */
public record Script(Kind kind, String spoken, List<Cue> cues, List<Integer> starts, List<Remark> problems) {
    /** How a script is written. */
    public enum Kind {
        TEXT,
        WEBVTT,
        SUBRIP
    }

    public Script {
        cues = List.copyOf(cues);
        starts = List.copyOf(starts);
        problems = List.copyOf(problems);
        if (cues.size() != starts.size()) {
            throw new IllegalArgumentException("each cue starts somewhere");
        }
    }

    /** Reads a script; its kind is known by its form. */
    public static Script read(String text) {
        String plain = text.startsWith("\uFEFF") ? text.substring(1) : text;
        if (CaptionReader.isVtt(plain)) {
            return of(Kind.WEBVTT, CaptionReader.vtt(plain));
        }
        return CaptionReader.isSubRip(plain)
                ? of(Kind.SUBRIP, CaptionReader.subRip(plain))
                : new Script(Kind.TEXT, plain, List.of(), List.of(), List.of());
    }

    private static Script of(Kind kind, CaptionReader.Read read) {
        var spoken = new StringBuilder();
        var starts = new ArrayList<Integer>();
        for (var cue : read.cues()) {
            spoken.append(spoken.isEmpty() ? "" : "\n");
            starts.add(spoken.length());
            spoken.append(cue.text());
        }
        return new Script(kind, spoken.toString(), read.cues(), starts, read.problems());
    }

    public boolean isTimed() {
        return !cues.isEmpty();
    }

    /** When the cue begins in which a character is spoken, in milliseconds; empty for plain text. */
    public OptionalLong timeAt(int offset) {
        int low = 0;
        int high = starts.size() - 1;
        while (low < high) {
            int middle = (low + high + 1) / 2;
            if (starts.get(middle) <= offset) {
                low = middle;
            } else {
                high = middle - 1;
            }
        }
        return cues.isEmpty()
                ? OptionalLong.empty()
                : OptionalLong.of(cues.get(low).from());
    }
}
