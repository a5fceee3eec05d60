package groundbass.score;

import groundbass.score.Arrival.Kind;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;

/** What must be true of a line beyond each of its bars, so that line text can say it. */
final class LineChecks {
    private final Header header;
    private final List<Bar> bars;
    private final List<Meter> meters;

    LineChecks(Header header, List<Bar> bars, List<Meter> meters) {
        this.header = header;
        this.bars = bars;
        this.meters = meters;
    }

    void all() {
        checkSize();
        checkFirstBar();
        IntStream.range(0, bars.size()).forEach(i -> {
            checkBounds(bars.get(i), meters.get(i));
            bars.get(i).copy().ifPresent(copy -> checkCopy(i, copy));
        });
        checkGrids();
        checkArrivals();
        checkSpellings();
    }

    private void checkSize() {
        int notes = bars.stream().mapToInt(bar -> bar.notes().size()).sum();
        if (bars.size() > Line.MOST_BARS || notes > Line.MOST_NOTES) {
            throw new IllegalArgumentException("a line has at most " + Line.MOST_BARS + " bars and " + Line.MOST_NOTES
                    + " notes: " + bars.size() + ", " + notes);
        }
    }

    /** What holds from the first bar on is the header's to say. */
    private void checkFirstBar() {
        var changes = bars.get(0).changes();
        if (changes.key().isPresent()
                || changes.meter().isPresent()
                || changes.tempo().isPresent()
                || changes.feel().isPresent()
                || changes.style().isPresent()) {
            throw new IllegalArgumentException("what changes at the first bar belongs into the header: " + changes);
        }
    }

    private static void checkBounds(Bar bar, Meter meter) {
        if (Count.at(bar.from(), meter).isEmpty() || Count.at(bar.to(), meter).isEmpty()) {
            throw new IllegalArgumentException("a bar begins and ends on a count: " + bar.from() + " to " + bar.to());
        }
    }

    private void checkCopy(int index, Copy copy) {
        int first = bars.get(0).isPickup() ? 0 : 1;
        int source = copy.bar() - first;
        if (source < 0 || source >= index) {
            throw new IllegalArgumentException("only an earlier bar can be copied: " + copy.bar());
        }
        var meter = meters.get(source);
        copy.counts().ifPresent(span -> {
            boolean wholeBeats = meter.beatStarts().contains(span.from())
                    && !span.to().isAfter(meter.length())
                    && (span.to().equals(meter.length()) || meter.beatStarts().contains(span.to()));
            if (!wholeBeats) {
                throw new IllegalArgumentException("only whole beats can be copied: " + span);
            }
        });
    }

    private void checkGrids() {
        var starts = starts();
        var grids = meters.stream().map(Grid::new).toList();
        for (int i = 0; i < bars.size(); i++) {
            var bar = bars.get(i);
            for (var chord : bar.chords()) {
                admit(grids.get(i), chord.at());
            }
            for (var direction : bar.directions()) {
                admit(grids.get(i), direction.at());
            }
            for (var note : bar.notes()) {
                admit(grids.get(i), note.onset());
                admitEnd(i, note, starts, grids);
            }
        }
    }

    /** A held note ends in a later bar, and on that bar's grid. */
    private void admitEnd(int index, Note note, List<Fraction> starts, List<Grid> grids) {
        var end = starts.get(index).plus(note.end()).minus(bars.get(index).from());
        int last = index;
        while (last + 1 < bars.size() && starts.get(last + 1).isBefore(end)) {
            last++;
        }
        admit(grids.get(last), end.minus(starts.get(last)).plus(bars.get(last).from()));
    }

    private List<Fraction> starts() {
        var starts = new java.util.ArrayList<Fraction>();
        var at = Fraction.ZERO;
        for (var bar : bars) {
            starts.add(at);
            at = at.plus(bar.length());
        }
        return starts;
    }

    private static void admit(Grid grid, Fraction time) {
        if (!grid.admit(time)) {
            throw new IllegalArgumentException("too finely divided: " + time);
        }
    }

    /** A note is hammered, pulled or slid to from one that was played before it on its string. */
    private void checkArrivals() {
        Set<Integer> played = new HashSet<>();
        for (var bar : bars) {
            for (var note : bar.notes()) {
                boolean needsSource =
                        note.arrival().filter(arrival -> !arrival.isGrace()).isPresent();
                if (needsSource && !played.contains(note.string())) {
                    var kind = note.arrival().map(Arrival::kind).map(Kind::word).orElse("");
                    throw new IllegalArgumentException("no note before the " + kind + " on string " + note.string());
                }
                played.add(note.string());
            }
        }
    }

    private void checkSpellings() {
        for (var bar : bars) {
            for (var note : bar.notes()) {
                note.ornaments().spelling().ifPresent(name -> {
                    var midi = note.midi(header.tuning());
                    if (midi.isEmpty() || Math.floorMod(midi.getAsInt(), 12) != name.pitchClass()) {
                        throw new IllegalArgumentException(name + " does not name what sounds at " + note.place());
                    }
                });
            }
        }
    }
}
