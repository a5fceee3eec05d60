package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Puts the notes on the timeline: swung first, then string by string, for a string sounds until it is touched. */
final class TimedNotes {
    private static final Comparator<TimedNote> ORDER = Comparator.comparing(
                    (TimedNote note) -> note.when().at())
            .thenComparing(TimedNote::string, Comparator.reverseOrder());

    private TimedNotes() {}

    /** A note with its swung onset and end, before anything of how it is played. */
    record Onset(TimedBar bar, Note note, Fraction at, Fraction end) {
        Origin origin() {
            return new Origin(new Position(bar.number(), note.onset()), bar.pass(), bar.round());
        }

        /** When it comes as written, before swing. */
        Fraction written() {
            return bar.moment(note.onset());
        }

        Onset later(Fraction delay) {
            return new Onset(bar, note, at.plus(delay), end);
        }

        Fraction length() {
            return end.minus(at);
        }
    }

    static List<TimedNote> of(Line line, List<TimedBar> bars, TempoMap tempos) {
        var end = bars.get(bars.size() - 1).end();
        var loudness = new DynamicCourse(bars);
        Map<Integer, List<Onset>> strings = Rolls.played(
                        onsets(bars), line.header().tuning(), tempos)
                .stream()
                .collect(Collectors.groupingBy(onset -> onset.note().string(), TreeMap::new, Collectors.toList()));
        return strings.values().stream()
                .flatMap(string -> new StringPart(line.header().tuning(), tempos, loudness, string, end).notes())
                .sorted(ORDER)
                .toList();
    }

    private static List<Onset> onsets(List<TimedBar> bars) {
        var straight = new ArrayList<Onset>();
        for (var bar : bars) {
            for (var note : bar.bar().notes()) {
                straight.add(new Onset(bar, note, bar.moment(note.onset()), bar.moment(note.end())));
            }
        }
        var swung = SwungTime.ofNotes(bars);
        return straight.stream()
                .map(onset -> new Onset(onset.bar(), onset.note(), swung.of(onset.at()), swung.of(onset.end())))
                .toList();
    }
}
