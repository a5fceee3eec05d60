package groundbass.linetext.edit;

import groundbass.linetext.assemble.BarExtent;
import groundbass.linetext.assemble.Bounds;
import groundbass.linetext.assemble.CountStretches.Stretch;
import groundbass.linetext.source.Splice;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.RawBar;
import groundbass.remark.Span;
import groundbass.score.Copy;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Changes to the count lines of one bar. */
final class CountEdits {
    private static final String REST = "rest";
    private static final String HOLD = "hold";

    private final IndexedText text;
    private final int index;
    private final RawBar bar;
    private final BarExtent extent;
    private final CountLayout layout;

    CountEdits(IndexedText text, int index) {
        this.text = text;
        this.index = index;
        this.bar = text.bars().get(index);
        this.extent = text.extent(index);
        this.layout = new CountLayout(text, index);
    }

    List<Splice> events(Count at, String typed) {
        String events = LineEdit.oneLine(typed);
        return line(at).map(found -> List.of(layout.write(found, events)))
                .orElseGet(() -> inside(at) ? List.of(layout.insert(at.toString(), offset(at), events)) : List.of());
    }

    List<Splice> add(Count at) {
        if (line(at).isPresent() || !inside(at)) {
            return List.of();
        }
        return covering(offset(at))
                .map(found -> split(found, offset(at)))
                .orElseGet(() -> List.of(layout.insert(at.toString(), offset(at), REST)));
    }

    List<Splice> remove(Count at) {
        var found = line(at);
        if (found.isEmpty()) {
            return List.of();
        }
        if (found.get().targets().size() > 1) {
            return List.of(layout.withoutTarget(found.get(), at));
        }
        var stretches = text.stretches(index);
        var here = stretches.stream()
                .filter(stretch -> stretch.line().equals(found.get()))
                .findFirst();
        var before = stretches.stream()
                .filter(stretch ->
                        here.isPresent() && stretch.to().equals(here.get().from()))
                .findFirst();
        if (before.isEmpty()) {
            return List.of(layout.write(found.get(), REST));
        }
        var splices = new ArrayList<Splice>();
        splices.add(
                text.deleteLines(found.get().span().line(), found.get().span().line()));
        retarget(before.get(), here.get().to()).ifPresent(splices::add);
        return splices;
    }

    List<Splice> step(Count at, Fraction length, String typed) {
        String events = LineEdit.oneLine(typed);
        if (!inside(at) || !length.isPositive()) {
            return List.of();
        }
        var covering = covering(offset(at));
        if (covering.isEmpty()) {
            return List.of(layout.insert(at.toString(), offset(at), events));
        }
        var stretch = covering.get();
        if (stretch.line().targets().size() > 1) {
            return List.of(); // what stands at several counts is not changed at one of them
        }
        var event = eventAt(stretch, offset(at));
        boolean rest = stretch.line().events().size() == 1
                && stretch.line().events().get(0).items().isEmpty();
        if (rest) {
            return intoRest(stretch, offset(at), length, events);
        }
        if (event.isPresent()) {
            return List.of(replaceEvent(event.get(), events));
        }
        return stretch.line().events().size() == 1 ? cut(stretch, offset(at), events) : List.of();
    }

    /** The rest before stays, and so does what is left of it from the next beat on. */
    private List<Splice> intoRest(Stretch rest, Fraction at, Fraction length, String events) {
        var end = extent.meter().beatEnd(at.plus(length).minus(Fraction.of(1, 1024)));
        var reach = end.min(rest.to());
        var lines = new ArrayList<String>();
        String label = Bounds.counts(new Copy.Span(at, reach), extent.to(), meter());
        if (rest.from().isBefore(at)) {
            lines.add(layout.line(counts(rest.from(), at), REST));
        }
        lines.add(layout.line(label, events));
        if (reach.isBefore(rest.to())) {
            lines.add(layout.line(counts(reach, rest.to()), REST));
        }
        return layout.replaceLine(rest.line(), lines);
    }

    /** What sounded is cut where the new thing begins, which then fills the rest of its time. */
    private List<Splice> cut(Stretch stretch, Fraction at, String events) {
        var splices = new ArrayList<Splice>();
        retarget(stretch, at).ifPresent(splices::add);
        splices.add(layout.insertBehind(stretch.line(), counts(at, stretch.to()), events));
        return splices;
    }

    private List<Splice> split(Stretch stretch, Fraction at) {
        var events = stretch.line().events();
        if (stretch.line().targets().size() > 1) {
            return List.of();
        }
        if (events.size() == 1) {
            return cut(stretch, at, events.get(0).items().isEmpty() ? REST : HOLD);
        }
        int second = indexAt(stretch, at);
        if (second <= 0) {
            return List.of();
        }
        var before = events.get(second - 1).span();
        var moved = IndexedText.events(stretch.line());
        int end = text.end(moved);
        String behind = text.text(new Span(
                moved.line(),
                events.get(second).span().column(),
                end - text.start(events.get(second).span())));
        var splices = new ArrayList<Splice>();
        retarget(stretch, at).ifPresent(splices::add);
        splices.add(new Splice(text.end(before), end, ""));
        splices.add(layout.insertBehind(stretch.line(), counts(at, stretch.to()), behind));
        return splices;
    }

    /** Says anew how far a line reaches, where that is no longer what its counts say. */
    private Optional<Splice> retarget(Stretch stretch, Fraction to) {
        String label = counts(stretch.from(), to);
        boolean shortened = to.isBefore(stretch.to()) && !to.isBefore(stretch.lastBeat());
        boolean needless = stretch.target().last().isEmpty() && (shortened || !label.contains("-"));
        return needless || stretch.line().targets().size() > 1
                ? Optional.empty()
                : Optional.of(layout.relabel(stretch.line(), label));
    }

    private Splice replaceEvent(Event event, String events) {
        String shares = event.shares() > 1 && !events.contains(",") ? " for " + event.shares() : "";
        return text.replace(event.span(), events + shares);
    }

    private Optional<Event> eventAt(Stretch stretch, Fraction at) {
        int found = indexAt(stretch, at);
        return found < 0
                ? Optional.empty()
                : Optional.of(stretch.line().events().get(found));
    }

    /** Which event of a line begins at this time; -1 where none does. */
    private static int indexAt(Stretch stretch, Fraction at) {
        int shares = Math.max(1, stretch.line().shares());
        var share = stretch.to().minus(stretch.from()).dividedBy(shares);
        var begin = stretch.from();
        for (int i = 0; i < stretch.line().events().size(); i++) {
            if (begin.equals(at)) {
                return i;
            }
            begin = begin.plus(share.times(stretch.line().events().get(i).shares()));
        }
        return -1;
    }

    private Optional<Stretch> covering(Fraction at) {
        return text.stretches(index).stream()
                .filter(stretch -> stretch.span().contains(at))
                .findFirst();
    }

    private Optional<CountLine> line(Count at) {
        return bar.counts.stream()
                .filter(count -> count.targets().stream()
                        .anyMatch(target -> target.from().equals(at)))
                .findFirst();
    }

    private String counts(Fraction from, Fraction to) {
        return Bounds.counts(new Copy.Span(from, to), extent.to(), meter());
    }

    private boolean inside(Count at) {
        return extent.contains(offset(at));
    }

    private Fraction offset(Count at) {
        return at.offset(meter());
    }

    private Meter meter() {
        return extent.meter();
    }
}
