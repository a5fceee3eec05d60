package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Technique;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.Predicate;

/**
 * What lasts over several notes: words where it begins and a dashed line as far as it goes (rule: palm-mute-line,
 * let-ring-line).
 */
final class Spans {
    private final List<Bar> bars;
    private final DirectionsByBar moments;

    /** A moment at which notes begin, and until when the longest of those meant sounds in its bar. */
    private record End(int bar, Fraction at) {
        /** What lasts on while another note begins goes as far as that one. */
        End before(int otherBar, Fraction other) {
            return bar == otherBar ? new End(bar, at.min(other)) : this;
        }
    }

    private Spans(List<Bar> bars, DirectionsByBar moments) {
        this.bars = bars;
        this.moments = moments;
    }

    static void add(List<Bar> bars, DirectionsByBar moments) {
        var spans = new Spans(bars, moments);
        spans.add("P.M.", DashedLine.PALM_MUTE, note -> isStruck(note, Technique.MUTE));
        spans.add("rake", DashedLine.RAKE, note -> isStruck(note, Technique.RAKE));
        spans.add("let ring", DashedLine.RING, note -> note.has(Mark.RING));
    }

    private static boolean isStruck(Note note, Technique hand) {
        return note.pluck().filter(hand::equals).isPresent();
    }

    private void add(String words, DashedLine line, Predicate<Note> isMeant) {
        var open = Optional.<End>empty();
        for (int i = 0; i < bars.size(); i++) {
            var bar = bars.get(i);
            var onsets = new TreeMap<Fraction, Fraction>();
            bar.notes().forEach(note -> onsets.merge(note.onset(), end(note, bar, isMeant), Fraction::max));
            for (var onset : onsets.entrySet()) {
                if (onset.getValue().isPositive()) {
                    open = open.isPresent() ? open : begin(i, onset.getKey(), words, line);
                    open = Optional.of(new End(i, onset.getValue()));
                } else {
                    int index = i;
                    open.ifPresent(end -> close(end.before(index, onset.getKey()), line));
                    open = Optional.empty();
                }
            }
        }
        open.ifPresent(end -> close(end, line));
    }

    /** Zero where the note is not meant. */
    private static Fraction end(Note note, Bar bar, Predicate<Note> isMeant) {
        return isMeant.test(note) ? note.end().min(bar.to()) : Fraction.ZERO;
    }

    private Optional<End> begin(int bar, Fraction at, String words, DashedLine line) {
        moments.add(bar, at, DirectionElement.below(Node.text("words", words), line.start()));
        return Optional.of(new End(bar, at));
    }

    private void close(End end, DashedLine line) {
        moments.add(end.bar(), end.at(), DirectionElement.below(line.stop()));
    }
}
