package groundbass.sound.string;

import groundbass.performance.TimedNote;
import groundbass.signal.SampleRate;
import java.util.ArrayList;
import java.util.List;

/**
 * When a string lies open while others sound. Where nothing is played, the hands lie on all of them; a short breath
 * between two notes is none.
 */
final class IdleTimes {
    private static final double BREATH_SECONDS = 0.1;

    private IdleTimes() {}

    /** From one sample until before another. */
    record Span(long from, long until) {}

    /** @param notes of all strings, by moment */
    static List<Span> of(SampleRate rate, int string, List<TimedNote> notes) {
        var own = notes.stream()
                .filter(note -> note.string() == string)
                .map(note -> span(rate, note))
                .toList();
        return played(rate, notes).stream()
                .flatMap(span -> between(span, own).stream())
                .toList();
    }

    /** While anything is played. */
    private static List<Span> played(SampleRate rate, List<TimedNote> notes) {
        var played = new ArrayList<Span>();
        for (var note : notes) {
            var span = span(rate, note);
            int last = played.size() - 1;
            if (last >= 0 && span.from() <= played.get(last).until() + rate.at(BREATH_SECONDS)) {
                var before = played.get(last);
                played.set(last, new Span(before.from(), Math.max(before.until(), span.until())));
            } else {
                played.add(span);
            }
        }
        return played;
    }

    /** What is left of a span without those that the string is played in. */
    private static List<Span> between(Span span, List<Span> own) {
        var left = new ArrayList<Span>();
        long from = span.from();
        for (var note : own) {
            if (note.from() >= span.until() || note.until() <= from) {
                continue;
            }
            if (note.from() > from) {
                left.add(new Span(from, note.from()));
            }
            from = note.until();
        }
        if (from < span.until()) {
            left.add(new Span(from, span.until()));
        }
        return left;
    }

    private static Span span(SampleRate rate, TimedNote note) {
        return new Span(rate.at(note.when().start()), rate.at(note.when().end()));
    }
}
