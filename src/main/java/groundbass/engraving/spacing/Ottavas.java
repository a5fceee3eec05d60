package groundbass.engraving.spacing;

import groundbass.score.Fraction;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Long passages that would need more than four ledger lines are written an octave lower, under a sign that says so
 * (rule: octave-sign-when-high). A lower note between two high ones stays under it. Only in beats where one voice plays,
 * and never between two heads of one tie.
 */
public final class Ottavas {
    /** Every note of the passage has three ledger lines, some note more than four. */
    private static final int HIGH = 14;

    private static final int HIGHEST_WITHOUT = 17;

    /** How many chords make a passage long. */
    private static final int LONG = 4;

    /** A lower note that stays inside the staff under the sign. */
    private static final int LOWER = 9;

    private final List<Set<Fraction>> raised;
    private final List<At> run = new ArrayList<>();

    private record At(int bar, Chord chord) {}

    private Ottavas(List<WrittenBar> bars) {
        raised = none(bars);
        for (int i = 0; i < bars.size(); i++) {
            read(bars.get(i), i);
        }
        close();
    }

    /** For each bar, the onsets of what is written an octave lower. */
    public static List<Set<Fraction>> of(List<WrittenBar> bars) {
        return new Ottavas(bars).raised;
    }

    public static List<Set<Fraction>> none(List<WrittenBar> bars) {
        var none = new ArrayList<Set<Fraction>>();
        bars.forEach(bar -> none.add(new HashSet<>()));
        return none;
    }

    private void read(WrittenBar bar, int index) {
        for (var element : bar.voices().get(0).elements()) {
            if (bar.voicesAt(element) > 1) {
                close();
            } else {
                read(element, index);
            }
        }
    }

    private void read(Element element, int bar) {
        if (!(element instanceof Chord chord)) {
            return;
        }
        boolean goesOn = isFrom(HIGH, chord)
                || isFrom(LOWER, chord)
                        && !run.isEmpty()
                        && isFrom(HIGH, run.get(run.size() - 1).chord());
        if (goesOn) {
            run.add(new At(bar, chord));
        } else {
            close();
        }
    }

    private static boolean isFrom(int position, Chord chord) {
        return chord.heads().stream().allMatch(head -> Positions.of(head) >= position);
    }

    private void close() {
        if (!run.isEmpty() && !isFrom(HIGH, run.get(run.size() - 1).chord())) {
            run.remove(run.size() - 1);
        }
        while (!run.isEmpty() && run.get(0).chord().heads().stream().anyMatch(Head::tiedFrom)) {
            run.remove(0);
        }
        while (!run.isEmpty()
                && run.get(run.size() - 1).chord().heads().stream().anyMatch(Head::tiedTo)) {
            run.remove(run.size() - 1);
        }
        boolean high = run.stream()
                .flatMap(at -> at.chord().heads().stream())
                .anyMatch(head -> Positions.of(head) > HIGHEST_WITHOUT);
        if (high && run.size() >= LONG) {
            run.forEach(at -> raised.get(at.bar()).add(at.chord().onset()));
        }
        run.clear();
    }
}
