package groundbass.checks.kin;

import groundbass.checks.kin.Likeness.Exchanged;
import groundbass.checks.kin.Likeness.NoDeadNote;
import groundbass.checks.kin.Likeness.OtherPlace;
import groundbass.checks.kin.Likeness.OtherStroke;
import groundbass.checks.kin.Likeness.OtherTime;
import groundbass.checks.kin.Likeness.Same;
import java.util.Optional;
import java.util.function.IntPredicate;

/** Lays one figure over another. */
final class Comparing {
    private static final int FEWEST_ALIKE = 2;
    private static final int MOST_EXCHANGED = 4;
    private static final Same SAME = new Same();

    private final Figure pattern;
    private final Figure judged;

    private Comparing(Figure pattern, Figure judged) {
        this.pattern = pattern;
        this.judged = judged;
    }

    /** How the second figure is like the first; empty where it differs in more than one thing. */
    static Optional<Likeness> of(Figure pattern, Figure judged) {
        var comparing = new Comparing(pattern, judged);
        int more = pattern.size() - judged.size();
        return more == 0 ? comparing.notes() : more == 1 ? comparing.deadNote() : Optional.empty();
    }

    private Optional<Likeness> notes() {
        var late = Differing.in(pattern, i -> !pattern.onset(i).equals(judged.onset(i)));
        if (late.many() > 1 || pattern.size() <= FEWEST_ALIKE) {
            return Optional.empty();
        }
        return FigureShift.most(pattern, judged)
                .flatMap(shift -> late.many() == 0 ? placed(shift) : inTime(shift, late.first()));
    }

    private Optional<Likeness> inTime(FigureShift shift, int late) {
        return misplaced(shift).many() == 0 ? Optional.of(new OtherTime(late, pattern.onset(late))) : Optional.empty();
    }

    private Optional<Likeness> placed(FigureShift shift) {
        var misplaced = misplaced(shift);
        int many = misplaced.many();
        if (many == 0) {
            return Optional.of(struck());
        }
        if (many % 2 == 0 && many <= MOST_EXCHANGED && areExchanged(shift)) {
            return Optional.of(new Exchanged(misplaced.first(), many));
        }
        int note = misplaced.first();
        return many > 1 ? Optional.empty() : shift.expected(note).map(place -> new OtherPlace(note, place));
    }

    private Differing misplaced(FigureShift shift) {
        return Differing.in(pattern, i -> !shift.leads(i, i));
    }

    /** Whether whatever is not at its place has changed places with its neighbour. */
    private boolean areExchanged(FigureShift shift) {
        for (int i = 0; i < pattern.size(); i++) {
            if (!shift.leads(i, i) && !isExchanged(shift, i++)) {
                return false;
            }
        }
        return true;
    }

    private boolean isExchanged(FigureShift shift, int note) {
        return note + 1 < pattern.size() && shift.leads(note, note + 1) && shift.leads(note + 1, note);
    }

    private Likeness struck() {
        var other = Differing.in(
                pattern, i -> !pattern.note(i).pluck().equals(judged.note(i).pluck()));
        return other.many() == 1
                ? pattern.note(other.first())
                        .pluck()
                        .<Likeness>map(stroke -> new OtherStroke(other.first(), stroke))
                        .orElse(SAME)
                : SAME;
    }

    /** Whether a figure is the pattern but for a dead note. */
    private Optional<Likeness> deadNote() {
        for (int i = 1; i < pattern.size(); i++) {
            if (pattern.note(i).isDead()
                    && of(pattern.without(i), judged).filter(SAME::equals).isPresent()) {
                return Optional.of(new NoDeadNote(i - 1, pattern.onset(i)));
            }
        }
        return Optional.empty();
    }

    /** In how many notes two figures differ, and in which first. */
    private record Differing(int many, int first) {
        static Differing in(Figure figure, IntPredicate differs) {
            int many = 0;
            int first = -1;
            for (int i = 0; i < figure.size(); i++) {
                if (differs.test(i)) {
                    first = many == 0 ? i : first;
                    many++;
                }
            }
            return new Differing(many, first);
        }
    }
}
