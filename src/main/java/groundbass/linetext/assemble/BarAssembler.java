package groundbass.linetext.assemble;

import groundbass.linetext.assemble.CountStretches.Stretch;
import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.problem.TextProblems;
import groundbass.linetext.source.Moment;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.Event.Held;
import groundbass.linetext.typed.Event.Played;
import groundbass.linetext.typed.Event.Until;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.TypedSpread;
import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.score.Bar;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Grid;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Gives everything typed in one bar its time, in the order in which it sounds. */
final class BarAssembler {
    private final BarExtent extent;
    private final Desk desk;
    private final AssembledBar bar;
    private final Grid grid;
    private boolean full;

    /** What the bars of one line share while they are read. */
    record Desk(PlaceResolver neck, Strings strings, Origins origins, Problems problems, NoteBudget budget) {}

    /** How many notes the line may still have. */
    static final class NoteBudget {
        private int left = Line.MOST_NOTES;

        boolean take() {
            return left-- > 0;
        }
    }

    BarAssembler(BarExtent extent, Desk desk) {
        this.extent = extent;
        this.desk = desk;
        this.bar = new AssembledBar(extent);
        this.grid = new Grid(extent.meter());
    }

    AssembledBar assemble(RawBar raw, Copying copied) {
        if (extent.afterSeam()) {
            desk.strings().close();
        }
        var stretches = CountStretches.of(raw.counts, extent, desk.problems());
        var said = stretches.stream().map(Stretch::span).toList();
        var wanted = raw.head.chords().isPresent() ? copied.withoutChords() : copied;
        var rest = admitted(wanted.without(said), raw);
        if (!raw.unread) {
            new GapFinder(extent, desk.problems()).check(stretches, rest.covered(), raw.head.span());
        }
        raw.head.copied().filter(any -> !rest.lost().isEmpty()).ifPresent(head -> tellLost(head, rest));
        sound(stretches, rest, raw.head.copied().map(RawBar.Copied::span).orElse(raw.head.span()));
        bar.directions.addAll(rest.directions());
        new ChordReader(extent, grid, desk.problems()).read(raw.head.chords(), rest.chords(), bar.chords);
        return bar;
    }

    /** Copied times lie on the grid of another bar; both together may be too fine. */
    private Copying admitted(Copying copied, RawBar raw) {
        boolean fits = copied.notes().stream().allMatch(note -> grid.admit(note.onset()) && grid.admit(note.end()))
                && copied.directions().stream().allMatch(direction -> grid.admit(direction.at()))
                && copied.chords().stream().allMatch(chord -> grid.admit(chord.at()));
        if (!fits) {
            desk.problems().add(BarProblems.tooFine(raw.head.span(), extent.number()));
            return new Copying(List.of(), List.of(), List.of(), List.of(), copied.covered());
        }
        return copied;
    }

    private void tellLost(RawBar.Copied head, Copying rest) {
        var neck = desk.neck();
        var places = rest.lost().stream()
                .map(note -> neck.print(note.place()))
                .distinct()
                .toList();
        desk.problems().add(BarProblems.shiftedOff(head.span(), head.bar(), places, neck.strings(), neck.frets()));
    }

    private void sound(List<Stretch> stretches, Copying copied, Span copySpan) {
        int next = 0;
        for (var stretch : stretches) {
            while (next < copied.notes().size()
                    && copied.notes().get(next).onset().isBefore(stretch.from())) {
                takeOver(copied.notes().get(next++), copySpan);
            }
            fill(stretch);
        }
        while (next < copied.notes().size()) {
            takeOver(copied.notes().get(next++), copySpan);
        }
    }

    /** On the string that it is moved to, there may be nothing yet that a note is hammered, pulled or slid from. */
    private void takeOver(Note note, Span span) {
        var arrival = note.arrival().filter(found -> !found.isGrace());
        if (arrival.isPresent() && !desk.strings().wasPlayed(note.string())) {
            desk.problems()
                    .add(BarProblems.noSourceThere(span, arrival.get().kind().word()));
            begin(note.struck(extent.style()), span);
        } else {
            begin(note, span);
        }
    }

    private void fill(Stretch stretch) {
        int shares = Math.max(1, stretch.line().shares());
        var share = stretch.to().minus(stretch.from()).dividedBy(shares);
        if (!grid.admit(stretch.from()) || !grid.admit(stretch.to()) || !grid.admit(share)) {
            desk.problems().add(BarProblems.tooFine(stretch.line().span(), extent.number()));
            return;
        }
        var at = stretch.from();
        for (var event : stretch.line().events()) {
            var end = at.plus(share.times(event.shares()));
            event(event, at, end);
            at = end;
        }
    }

    private void event(Event event, Fraction at, Fraction end) {
        desk.origins().putMoment(new Position(extent.number(), at), event.span());
        direct(event, at);
        var used = new HashSet<Integer>();
        int struck = 0;
        var bare = new ArrayList<Held>();
        for (var item : event.items()) {
            if (item instanceof Played played) {
                struck += play(event, played, at, end, used) ? 1 : 0;
            } else if (item instanceof Held held && held.string().isPresent()) {
                hold(held, at, end, used);
            } else if (item instanceof Held held) {
                bare.add(held);
            }
        }
        bare.forEach(held -> holdAll(held, at, end, used));
        if (struck < 2) {
            event.spread().ifPresent(typed -> desk.problems()
                    .add(EventProblems.chordOfOne(typed.span(), typed.spread().words())));
        }
    }

    private void direct(Event event, Fraction at) {
        int room = Bar.MOST_DIRECTIONS - bar.directions.size();
        if (room < 2 + event.texts().size()) {
            desk.problems().add(TextProblems.tooManyDirections(event.span()));
            return;
        }
        event.dynamic().ifPresent(dynamic -> bar.directions.add(new Direction.Loudness(at, dynamic)));
        event.hairpin().ifPresent(way -> bar.directions.add(new Direction.Hairpin(at, way)));
        event.texts().forEach(text -> bar.directions.add(new Direction.Words(at, text)));
    }

    /** Whether there was something to play. */
    private boolean play(Event event, Played played, Fraction at, Fraction end, Set<Integer> used) {
        var place = desk.neck().place(played, desk.problems());
        if (place.isEmpty() || !firstUse(place.get().string(), played.span(), used)) {
            return false;
        }
        var to = end(played.words().until(), at, end);
        var maker = new NoteMaker(desk.neck(), desk.strings(), desk.problems());
        var note = maker.make(played, place.get(), at, to.minus(at), extent);
        var spread = event.spread().map(TypedSpread::spread);
        begin(note.withOrnaments(note.ornaments().withSpread(spread)), played.span());
        return true;
    }

    private void hold(Held held, Fraction at, Fraction end, Set<Integer> used) {
        var string = held.string().flatMap(typed -> desk.neck().string(typed, "", desk.problems()));
        if (string.isEmpty() || !firstUse(string.get(), held.span(), used)) {
            return;
        }
        var to = end(held.until(), at, end);
        if (!desk.strings().hold(string.get(), extent.absolute(at), extent.absolute(to))) {
            desk.problems().add(nothingToHold(held.span(), at));
        }
    }

    private void holdAll(Held held, Fraction at, Fraction end, Set<Integer> used) {
        var now = extent.absolute(at);
        var to = extent.absolute(end(held.until(), at, end));
        boolean soundsOn = desk.strings().anySoundsAfter(now);
        if (!desk.strings().holdAll(now, to, used) && !soundsOn) {
            desk.problems().add(nothingToHold(held.span(), at));
        }
    }

    private Remark nothingToHold(Span span, Fraction at) {
        return extent.afterSeam() && at.equals(extent.from())
                ? EventProblems.holdOverSeam(span)
                : EventProblems.nothingToHold(span);
    }

    private boolean firstUse(int string, Span span, Set<Integer> used) {
        if (!used.add(string)) {
            desk.problems().add(EventProblems.stringTwice(span, desk.neck().nameOf(string)));
            return false;
        }
        return true;
    }

    private Fraction end(Optional<Until> until, Fraction at, Fraction usual) {
        if (until.isEmpty()) {
            return usual;
        }
        var span = until.get().span();
        var end = until.get()
                .moment()
                .map(moment -> moment.offset(extent.meter()))
                .orElse(extent.to());
        if (!end.isAfter(at) || end.isAfter(extent.to())) {
            desk.problems().add(EventProblems.untilOutside(span, at, extent.meter()));
            return usual;
        }
        if (!grid.admit(end)) {
            desk.problems().add(BarProblems.tooFine(span, extent.number()));
            return usual;
        }
        return end;
    }

    private void begin(Note note, Span span) {
        if (full || bar.sounds.size() >= Bar.MOST_NOTES || !desk.budget().take()) {
            if (!full) {
                desk.problems().add(TextProblems.tooManyNotes(span));
            }
            full = true;
            return;
        }
        var start = extent.absolute(note.onset());
        desk.strings().upTo(note.string(), start).ifPresent(before -> {
            if (before.end().isAfter(start)) {
                stop(before, note, start, span);
            }
        });
        var sound = new SoundingNote(note, start);
        desk.strings().begin(sound);
        bar.sounds.add(sound);
        desk.origins().putNote(new Position(extent.number(), note.onset()), note.string(), span);
    }

    private void stop(SoundingNote before, Note note, Fraction start, Span span) {
        String until =
                Moment.at(before.end().minus(extent.zero()), extent.meter()).toString();
        desk.problems().add(EventProblems.stillSounding(span, desk.neck().nameOf(note.string()), until));
        before.endAt(start);
    }
}
