package groundbass.intake.draft;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Grid;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Brings every time of a draft onto a grid that its bar can have. Plain divisions are admitted first, so that one odd
 * time does not take the room of many even ones.
 */
final class Snapping {
    /** What is finer than sixty-fourths of quintuplets of triplets was played, or rounded, and not written (ours). */
    private static final long PLAIN = 64 * 3 * 5;

    private static final Fraction FINE = Fraction.of(1, 64);
    private static final Fraction HALF = Fraction.of(1, 2);

    private final RoughLine draft;
    private final BarTimes times;
    private final NoticeList notices;
    private final Map<Fraction, Fraction> moved = new HashMap<>();

    private Snapping(RoughLine draft, NoticeList notices) {
        this.draft = draft;
        this.times = new BarTimes(draft.header(), draft.bars());
        this.notices = notices;
    }

    static RoughLine of(RoughLine draft, NoticeList notices) {
        var snapping = new Snapping(draft, notices);
        snapping.findMoves();
        return new RoughLine(draft.header(), snapping.bars(), snapping.notes());
    }

    private void findMoves() {
        var byBar = new HashMap<Integer, TreeSet<Fraction>>();
        moments().forEach(moment -> byBar.computeIfAbsent(times.barOf(moment), bar -> new TreeSet<>())
                .add(moment));
        byBar.forEach(this::findMoves);
    }

    private Stream<Fraction> moments() {
        var ofNotes = draft.notes().stream().flatMap(note -> Stream.of(note.start(), note.end()));
        var ofBars = IntStream.range(0, draft.bars().size()).boxed().flatMap(bar -> Stream.concat(
                        draft.bars().get(bar).chords().stream().map(ChordAt::at),
                        draft.bars().get(bar).directions().stream().map(Direction::at))
                .map(at -> times.moment(bar, at)));
        return Stream.concat(ofNotes, ofBars).filter(moment -> moment.isBefore(times.end()));
    }

    private void findMoves(int bar, TreeSet<Fraction> moments) {
        var grid = new Grid(times.meter(bar));
        moments.stream()
                .sorted(Comparator.comparingLong(
                        moment -> times.within(bar, moment).denominator()))
                .forEach(moment -> {
                    var at = times.within(bar, moment);
                    if (at.denominator() > PLAIN || !grid.admit(at)) {
                        moved.put(moment, times.moment(bar, nearest(bar, grid, at)));
                        notices.changed(bar, Message.of("intake.changed.time"));
                    }
                });
    }

    private Fraction nearest(int bar, Grid grid, Fraction at) {
        var quarter = times.meter(bar).count().dividedBy(4);
        var step = grid.admit(FINE) ? FINE : quarter;
        return step.times(at.dividedBy(step).plus(HALF).floor());
    }

    private Fraction snapped(Fraction moment) {
        return moved.getOrDefault(moment, moment);
    }

    private List<DraftNote> notes() {
        var notes = new ArrayList<DraftNote>();
        for (var note : draft.notes()) {
            var start = snapped(note.start());
            var end = snapped(note.end()).min(times.end());
            if (start.isBefore(end)) {
                notes.add(note.between(start, end));
            } else {
                notices.leftOut(times.barOf(note.start()), Message.of("intake.left.short"));
            }
        }
        return notes;
    }

    private List<Bar> bars() {
        return IntStream.range(0, draft.bars().size()).mapToObj(this::bar).toList();
    }

    private Bar bar(int index) {
        var bar = draft.bars().get(index);
        var said = new SaidOnce();
        bar.chords()
                .forEach(chord -> inside(index, chord.at()).ifPresent(at -> said.add(new ChordAt(at, chord.chord()))));
        bar.directions().forEach(each -> inside(index, each.at()).ifPresent(at -> said.add(each.movedTo(at))));
        return said.in(bar);
    }

    /** Empty where a time has been moved to where its bar ends. */
    private Optional<Fraction> inside(int index, Fraction at) {
        var moment = snapped(times.moment(index, at));
        return Optional.of(times.within(index, moment))
                .filter(moved -> moved.isBefore(draft.bars().get(index).to()));
    }
}
