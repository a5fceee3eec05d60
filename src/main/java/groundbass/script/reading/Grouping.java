package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.Said;
import groundbass.script.words.Sense;
import java.util.List;

/**
 * Gathers the chunks of a sentence into notes and the places where they are said to be. What has been said already of
 * the note in hand begins a new note when it is said again; a word like "and" or "then" begins one too, unless a pronoun
 * takes the note up again. {@link InHand} holds what was told so far; what each kind of chunk adds to it is told by
 * {@link NotesTold}, {@link DetailsTold} and {@link PlacesTold}, and what the small words between them do, here.
 */
final class Grouping {
    private final InHand hand = new InHand();
    private final Context context;
    private final NotesTold notes;
    private final DetailsTold details;
    private final PlacesTold places;

    private Grouping(Surroundings around, Context context) {
        this.context = context;
        this.notes = new NotesTold(around, hand, context);
        this.details = new DetailsTold(around, hand);
        this.places = new PlacesTold(around, hand, context);
    }

    static List<Segment> of(List<Said> chunks, Context context) {
        var grouping = new Grouping(new Surroundings(chunks), context);
        for (int i = 0; i < chunks.size(); i++) {
            grouping.take(chunks.get(i).chunk(), i);
        }
        return grouping.hand.end();
    }

    private void take(Chunk chunk, int i) {
        if (chunk instanceof Chunk.Tie tie) {
            tie(tie.sense());
        } else if (chunk instanceof Chunk.Bars || chunk instanceof Chunk.BarAt) {
            context.bars(chunk).ifPresent(places::bars);
        } else if (chunk instanceof Chunk.Beats || chunk instanceof Chunk.LastBeats || chunk instanceof Chunk.Part) {
            places.time(chunk, i);
        } else if (chunk instanceof Chunk.Order order) {
            places.order(order, i);
        } else {
            note(chunk, i);
            hand.told();
        }
    }

    private void note(Chunk chunk, int i) {
        if (chunk instanceof Chunk.Notes named) {
            notes.names(named, i);
        } else if (chunk instanceof Chunk.Places placed) {
            notes.places(placed, i);
        } else {
            details.take(chunk, i);
        }
    }

    private void tie(Sense sense) {
        switch (sense) {
            case SO -> {
                endThought();
                hand.breakOff();
                hand.place().beginClause();
            }
            case AND, THEN, BUT -> {
                endThought();
                hand.breakOff();
            }
            case COMMA -> endThought();
            case SEMICOLON -> {
                endThought();
                hand.demandOther();
            }
            case COLON -> {
                endThought();
                if (isAmount()) {
                    hand.demandOther();
                }
            }
            case PRONOUN, THAT -> {
                hand.takeUp();
                hand.place().continueClause();
            }
            case LEAD -> hand.expectLandmark();
            case THE_LINE -> hand.expectLine();
            default -> {}
        }
    }

    private void endThought() {
        hand.leaveLandmark();
        hand.place().endThought();
    }

    /** "Two sixteenths": after a colon comes which. */
    private boolean isAmount() {
        return hand.note()
                .filter(group -> group.all(note -> note.length().isPresent() && !note.hasCore()))
                .isPresent();
    }
}
