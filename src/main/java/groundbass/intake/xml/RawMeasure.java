package groundbass.intake.xml;

import groundbass.intake.draft.SaidOnce;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Repeats;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.score.Roadmap;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A measure while it is read: mutable, and known to its room alone. Times count from where the measure begins. */
final class RawMeasure {
    final int index;
    final String number;
    final boolean implicit;
    /** In whole notes from the beginning of the first bar. */
    final Fraction start;

    Fraction from = Fraction.ZERO;
    Fraction to = Fraction.ZERO;
    /** What was put before its first note to fill a count. */
    Fraction pad = Fraction.ZERO;

    Changes changes = Changes.NONE;
    boolean repeatStart;
    Optional<Ending> ending = Optional.empty();
    boolean endingEnd;
    Optional<RepeatEnd> repeatEnd = Optional.empty();
    Roadmap roadmap = Roadmap.NONE;
    private final List<ChordAt> chords = new ArrayList<>();
    private final List<Direction> directions = new ArrayList<>();

    RawMeasure(int index, String number, boolean implicit, Fraction start) {
        this.index = index;
        this.number = number;
        this.implicit = implicit;
        this.start = start;
    }

    /** @return false where the bar has all that it can have */
    boolean chord(ChordAt chord) {
        return chords.size() < Bar.MOST_DIRECTIONS && chords.add(chord);
    }

    /** @return false where the bar has all that it can have */
    boolean say(Direction direction) {
        return directions.size() < Bar.MOST_DIRECTIONS && directions.add(direction);
    }

    Fraction end() {
        return start.plus(to).minus(from);
    }

    /** A time of the measure as the bar counts it, inside the bar: what stands at its end belongs to its last count. */
    private Fraction inside(Fraction at, Fraction last) {
        var time = at.plus(pad).plus(from);
        return time.isBefore(to) ? time : last;
    }

    /** @param last where something is said that a file says at the end of the bar */
    Bar bar(Fraction last) {
        var repeats = new Repeats(repeatStart, ending, endingEnd, repeatEnd, roadmap);
        var bar = new Bar(from, to, changes, repeats, List.of(), List.of(), List.of(), Optional.empty());
        var said = new SaidOnce();
        chords.forEach(chord -> said.add(new ChordAt(inside(chord.at(), last), chord.chord())));
        directions.forEach(direction -> said.add(direction.movedTo(inside(direction.at(), last))));
        return said.in(bar);
    }
}
