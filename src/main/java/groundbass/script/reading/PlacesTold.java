package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.Where;
import groundbass.script.words.Sense;
import java.util.List;

/** Takes in where in the line something is: bars, beats, and which note of several. A new place ends a segment. */
final class PlacesTold {
    private final Surroundings around;
    private final InHand hand;
    private final Context context;

    PlacesTold(Surroundings around, InHand hand, Context context) {
        this.around = around;
        this.hand = hand;
        this.context = context;
    }

    private Where where() {
        return hand.segment().where();
    }

    void bars(List<Integer> numbers) {
        if (hand.isAtLandmark()) {
            return;
        }
        if (where().hasBars() && !hand.segment().isEmpty()) {
            hand.split(Where.UNSAID);
        }
        if (hand.place().isInOwnClause()) {
            hand.split(where());
        }
        hand.place().place(where().withBars(numbers, false));
    }

    void time(Chunk chunk, int i) {
        if (isEnd(chunk, i)) {
            return;
        }
        boolean refines = chunk instanceof Chunk.Part part
                && part.beat().isEmpty()
                && where().part().isEmpty();
        if (where().hasTime() && !hand.segment().isEmpty() && !refines) {
            hand.split(where().withoutTime().withoutOrder());
        }
        hand.place().place(timed(where(), chunk));
    }

    /** "Until beat three", "from two onwards": where something ends, or goes on from, is not where it is. */
    private boolean isEnd(Chunk chunk, int i) {
        boolean onwards = around.follows(i, Sense.FROM) && (where().hasTime() || chunk instanceof Chunk.Part);
        return around.follows(i, Sense.UNTIL) || onwards;
    }

    private Where timed(Where where, Chunk chunk) {
        if (chunk instanceof Chunk.Beats beats) {
            return where.withBeats(beats.numbers(), beats.exactly());
        }
        if (chunk instanceof Chunk.LastBeats last) {
            return where.withLastBeats(last.many());
        }
        var part = (Chunk.Part) chunk;
        if (part.beat().isPresent()) {
            return where.withBeats(List.of(part.beat().get()), false).withPart(part.part());
        }
        var beats = where.beats().isEmpty() ? context.beats() : where.beats();
        return beats.size() == 1 ? where.withBeats(beats, false).withPart(part.part()) : where;
    }

    void order(Chunk.Order order, int i) {
        if (hand.place().isBetweenThoughts() && !hand.segment().isEmpty()) {
            hand.split(where().withoutOrder());
        }
        if (where().order().isEmpty() || order.which() != Chunk.Which.ENDING) {
            hand.place().order(where().with(order.which(), order.nth(), order.ofAll()));
        }
        boolean several = order.nth() > 1 && order.which() != Chunk.Which.NTH;
        if (several) {
            hand.open(around.at(i), hand.note().isPresent()).change(note -> note.times(order.nth()));
        }
    }
}
