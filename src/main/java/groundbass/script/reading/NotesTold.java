package groundbass.script.reading;

import groundbass.script.claims.Chunk;
import groundbass.script.claims.Described;
import groundbass.script.claims.NamedPlace;
import groundbass.script.words.Sense;
import groundbass.theory.NoteName;
import java.util.Optional;
import java.util.function.Predicate;

/** Takes the names and places of notes in. */
final class NotesTold {
    private final Surroundings around;
    private final InHand hand;
    private final Context context;

    NotesTold(Surroundings around, InHand hand, Context context) {
        this.around = around;
        this.hand = hand;
        this.context = context;
    }

    void names(Chunk.Notes notes, int i) {
        if (around.isChordTones(i)) {
            return;
        }
        if (isSource(i) || isAimed(i)) {
            hand.expectLandmark();
        }
        if (hand.expectsLandmark()
                && hand.note().filter(group -> !group.isAway()).isPresent()) {
            hand.demandOther();
        }
        if (!notes.path()) {
            intoPath(i);
        }
        boolean touches = around.touchesTechnique(i);
        Predicate<Described> named = note -> note.name().isPresent() || (note.isDead() && !touches);
        new Values<NoteName>(notes.names(), named, Described::with).giveTo(hand, around.at(i));
        if (notes.path()) {
            hand.note().orElseThrow().asPath();
        }
    }

    void places(Chunk.Places places, int i) {
        if (!places.path()) {
            intoPath(i);
            if (isSource(i)) {
                hand.expectLandmark();
                hand.demandOther();
            }
        }
        var before = hand.lastString();
        var open = places.spots().size() == 1 ? openName(places.spots().get(0)) : Optional.<NoteName>empty();
        if (open.isPresent() && isOfAnotherName(open.get()) && around.isListed(i)) {
            hand.demandOther();
        }
        new Values<NamedPlace>(
                        places.spots(),
                        placed(places),
                        (note, spot) -> note.with(note.spot().or(spot)))
                .giveTo(hand, around.at(i));
        var group = hand.note().orElseThrow();
        open.filter(name -> group.all(note -> note.name().isEmpty()))
                .ifPresent(name -> group.change(note -> note.with(name)));
        if (places.path()) {
            group.asPath();
        }
        if (isFretOnly(places)) {
            before.ifPresent(
                    string -> group.change(note -> note.with(note.spot().or(string))));
        }
    }

    private static boolean isFretOnly(Chunk.Places places) {
        return places.spots().stream().allMatch(spot -> spot.string().isEmpty());
    }

    /** Whether a note has a place of this kind already. */
    private static Predicate<Described> placed(Chunk.Places places) {
        boolean stringOnly =
                places.spots().stream().allMatch(spot -> spot.fret().isEmpty());
        if (stringOnly) {
            return note -> note.spot().string().isPresent();
        }
        boolean fretOnly = isFretOnly(places);
        return note -> note.spot().fret().isPresent()
                || note.isDead()
                || (!fretOnly && note.spot().string().isPresent());
    }

    /** An open string is called by its name. */
    private Optional<NoteName> openName(NamedPlace spot) {
        return Optional.of(spot)
                .filter(one -> one.isWhole() && one.fret().getAsInt() == 0)
                .map(one -> context.string(one.string().getAsInt()));
    }

    private boolean isOfAnotherName(NoteName open) {
        return hand.has(note -> note.name()
                .filter(name -> name.pitchClass() != open.pitchClass())
                .isPresent());
    }

    /** "A from the third fret": where the hand comes from. */
    private boolean isSource(int i) {
        return around.follows(i, Sense.FROM) && hand.has(Described::hasCore);
    }

    /** "A passing note up to A": where it goes, after a note that is told already. */
    private boolean isAimed(int i) {
        return around.follows(i, Sense.TO, Sense.UNTIL)
                && hand.has(Described::hasCore)
                && !hand.has(Described::isReached);
    }

    /** "The hammer goes from the open D to the E": the first is not what is hammered. */
    private void intoPath(int i) {
        boolean from = around.follows(i, Sense.FROM) && hand.has(Described::isReached) && !hand.has(Described::hasCore);
        if (from) {
            hand.putBefore(around.at(i));
        } else if (i > 0) {
            hand.putReached();
        }
    }
}
