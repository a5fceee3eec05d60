package groundbass.intake.draft;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passes;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Sees to it that each string sounds one note at a time, and none over a repeat sign. */
final class Untangling {
    private final BarTimes times;
    private final NoticeList notices;
    private final List<Fraction> seams = new ArrayList<>();
    private final Map<Integer, Integer> last = new HashMap<>();
    private final Map<Integer, Integer> inBar = new HashMap<>();
    private final List<DraftNote> clear = new ArrayList<>();

    private Untangling(List<Bar> bars, BarTimes times, NoticeList notices) {
        this.times = times;
        this.notices = notices;
        for (int i = bars.size() - 1; i >= 0; i--) {
            seams.add(0, Passes.isSeam(bars, i) ? times.endOf(i) : seams.get(0));
        }
    }

    /** @param notes seated, in time */
    static List<DraftNote> of(List<Bar> bars, BarTimes times, List<DraftNote> notes, NoticeList notices) {
        var untangling = new Untangling(bars, times, notices);
        notes.forEach(untangling::add);
        return untangling.clear;
    }

    private void add(DraftNote note) {
        int bar = times.barOf(note.start());
        int string = note.place().string();
        var before = Optional.ofNullable(last.get(string)).map(clear::get);
        if (before.filter(other -> other.start().equals(note.start())).isPresent()) {
            notices.leftOut(bar, Message.of("intake.left.strings"));
            return;
        }
        before.filter(other -> other.end().isAfter(note.start())).ifPresent(other -> {
            clear.set(last.get(string), other.between(other.start(), note.start()));
            notices.changed(bar, Message.of("intake.changed.held"));
        });
        if (clear.size() == Line.MOST_NOTES || inBar.merge(bar, 1, Integer::sum) > Bar.MOST_NOTES) {
            notices.leftOut(bar, Message.of("intake.left.many"));
            return;
        }
        last.put(string, clear.size());
        clear.add(followed(withinSeam(note, bar), before));
    }

    private DraftNote withinSeam(DraftNote note, int bar) {
        var end = seams.get(bar);
        if (!note.end().isAfter(end)) {
            return note;
        }
        notices.changed(bar, Message.of("intake.changed.seam"));
        return note.between(note.start(), end);
    }

    /** What the fretting hand leads to needs a note that it leads from, on the same string. */
    private DraftNote followed(DraftNote note, Optional<DraftNote> before) {
        if (note.isLed() && before.isEmpty()) {
            notices.leftOut(times.barOf(note.start()), Message.of("intake.left.source"));
            return note.struck(Technique.FINGER);
        }
        int fret = note.place() instanceof Place.Fretted fretted
                ? fretted.fret() + note.graceStep().orElse(0)
                : 0;
        if (fret < 0 || fret > Place.Fretted.MOST_FRETS) {
            notices.leftOut(times.barOf(note.start()), Message.of("intake.left.grace"));
            return note.struck(Technique.FINGER);
        }
        return note;
    }
}
