package groundbass.script.reading;

import groundbass.script.claims.Described;
import groundbass.script.claims.Said;
import java.util.List;
import java.util.function.BiFunction;
import java.util.function.Predicate;

/**
 * One thing that is said of notes: names, places or lengths.
 *
 * @param has whether a note has it already
 * @param put a note with it
 */
record Values<T>(List<T> each, Predicate<Described> has, BiFunction<Described, T, Described> put) {
    /** Gives them to as many notes: to the last ones that lack them, to the ones in hand, or to new ones. */
    void giveTo(InHand hand, Said said) {
        var lacking = hand.lastLacking(each.size(), has);
        if (each.size() > 1 && lacking.size() == each.size()) {
            for (int i = 0; i < each.size(); i++) {
                give(lacking.get(i).spanning(said), i);
            }
            hand.takeUp();
        } else {
            giveTo(hand.open(said, !fit(hand)), hand, said);
        }
    }

    private void giveTo(Group group, InHand hand, Said said) {
        boolean firstOnly = each.size() > 1 && group.size() == 1 && group.any(Described::identifies);
        if (each.size() == 1 || firstOnly) {
            give(group, 0);
            for (int i = 1; i < each.size(); i++) {
                give(hand.open(said, true), i);
            }
        } else {
            group.spread(each.size());
            for (int i = 0; i < each.size(); i++) {
                T value = each.get(i);
                group.change(i, note -> put.apply(note, value));
            }
        }
    }

    private void give(Group group, int i) {
        group.change(note -> put.apply(note, each.get(i)));
    }

    /** Whether the notes in hand can have them. */
    private boolean fit(InHand hand) {
        return hand.note()
                .filter(group -> !group.any(has) && (each.size() == 1 ? fitsOne(group) : fitsMany(group)))
                .isPresent();
    }

    private boolean fitsMany(Group group) {
        return group.size() == 1 || group.size() == each.size();
    }

    /** One fret is not that of several notes, and one note is not "two sixteenths". */
    private boolean fitsOne(Group group) {
        var alone = put.apply(Described.NOTHING, each.get(0));
        boolean sharedFret = group.size() > 1 && alone.spot().fret().isPresent();
        boolean amount = alone.identifies() && group.any(Described::isAmount);
        return !sharedFret && !amount;
    }
}
