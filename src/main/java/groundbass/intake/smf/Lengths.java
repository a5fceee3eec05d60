package groundbass.intake.smf;

import groundbass.intake.draft.DraftNote;
import groundbass.score.Fraction;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;

/**
 * When notes begin and how long they are written. A player lets go a little early or late: what sounds for more than half
 * of the time to the next note is written up to it, and what is over soon after it is struck as one part of its beat
 * (common practice, no source).
 */
final class Lengths {
    /** Of the time to the next note. */
    private static final double HELD = 0.5;

    /** What overlaps the next note by no more than this share of a quarter only binds. */
    private static final double BINDING = 0.25;

    private final List<TickBar> bars;
    private final List<Quantizer> rhythms;
    private final Swung swung;
    private final List<Fraction> starts = new ArrayList<>();
    private final BarIndex index;
    private final Map<Long, Fraction> known = new HashMap<>();
    private final Fraction end;

    Lengths(List<TickBar> bars, BarIndex index, List<Quantizer> rhythms, Swung swung) {
        this.swung = swung;
        this.bars = bars;
        this.index = index;
        this.rhythms = rhythms;
        var at = Fraction.ZERO;
        for (var bar : bars) {
            starts.add(at);
            at = at.plus(bar.length());
        }
        this.end = at;
    }

    /** Those that are no grace notes, in the order in which they begin. */
    List<DraftNote> of(GraceFinder graces) {
        var notes = graces.notes();
        var onsets = new TreeSet<Long>();
        notes.forEach(note -> onsets.add(note.on()));
        var all = new ArrayList<DraftNote>();
        for (var note : notes) {
            var start = moment(note.on());
            if (start.isBefore(end)) {
                var until = end(note, start, onsets).min(end);
                var plain = DraftNote.of(start, until, note.key(), Technique.FINGER);
                var grace = Optional.ofNullable(graces.before().get(note));
                all.add(grace.map(each -> plain.from(each.key() - note.key())).orElse(plain));
            }
        }
        return all;
    }

    private Fraction end(Smf.Note note, Fraction start, TreeSet<Long> onsets) {
        var next = next(note, start, onsets).filter(each -> isUpTo(note, start, each));
        if (next.isPresent()) {
            return moment(next.get());
        }
        var written = moment(note.off());
        return written.isAfter(start) ? written : start.plus(part(note.on()));
    }

    /** Whether a note is written up to the next one. */
    private boolean isUpTo(Smf.Note note, Fraction start, long next) {
        if (note.off() >= next) {
            return note.off() - next <= BINDING * bars.get(0).perQuarter();
        }
        double share = (double) (note.off() - note.on()) / (next - note.on());
        return share > HELD && !moment(next).minus(start).isAfter(Fraction.ONE);
    }

    /** The next stroke that is written later than this one; none behind the last. */
    private Optional<Long> next(Smf.Note note, Fraction start, TreeSet<Long> onsets) {
        return onsets.tailSet(note.on(), false).stream()
                .filter(onset -> moment(onset).isAfter(start))
                .findFirst();
    }

    private Fraction moment(long tick) {
        return known.computeIfAbsent(tick, this::find);
    }

    private Fraction find(long tick) {
        int bar = index.of(tick);
        return starts.get(bar).plus(swung.written(rhythms.get(bar).at(tick)));
    }

    private Fraction part(long tick) {
        int bar = index.of(tick);
        var at = rhythms.get(bar).at(tick);
        return rhythms.get(bar).divisions().stream()
                .filter(division -> division.to().isAfter(at))
                .findFirst()
                .orElse(rhythms.get(bar).divisions().get(0))
                .part();
    }
}
