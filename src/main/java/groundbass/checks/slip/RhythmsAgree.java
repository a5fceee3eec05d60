package groundbass.checks.slip;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.checks.kin.Figure;
import groundbass.remark.Severity;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Beats that have one rhythm in every bar and in a single bar another, with one note earlier or later, may hold a slip. The
 * last bar ends as it likes (common practice, no source).
 */
final class RhythmsAgree implements Rule {
    private static final int FEWEST_OTHERS = 4;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var told = new HashSet<NoteAt>();
        return evidence.figures().stream()
                .map(figures -> figures.stream()
                        .filter(figure -> !MeantVariation.isLastBar(evidence, figure.bar()))
                        .toList())
                .flatMap(figures -> odd(figures).stream())
                .filter(odd -> !mayVary(evidence, odd))
                .filter(odd -> told.add(odd.figure().at(odd.note())))
                .flatMap(odd -> finding(evidence, odd).stream());
    }

    /** A figure that differs, the note in which it does, when that would begin, and a bar in which it does. */
    private record Odd(Figure figure, int note, Fraction expected, int bar) {}

    private static Optional<Odd> odd(List<Figure> figures) {
        Map<List<Fraction>, List<Figure>> byRhythm = new HashMap<>();
        figures.forEach(figure -> byRhythm.computeIfAbsent(onsets(figure), onsets -> new ArrayList<>())
                .add(figure));
        if (byRhythm.size() != 2 || figures.size() <= FEWEST_OTHERS) {
            return Optional.empty();
        }
        var rhythms = byRhythm.values().stream()
                .sorted((one, other) -> one.size() - other.size())
                .toList();
        return rhythms.get(0).size() == 1
                ? odd(rhythms.get(0).get(0), rhythms.get(1).get(0))
                : Optional.empty();
    }

    private static Optional<Odd> odd(Figure figure, Figure usual) {
        var here = onsets(figure);
        var there = onsets(usual);
        if (here.size() != there.size()) {
            return Optional.empty();
        }
        var moved = IntStream.range(0, here.size())
                .filter(i -> !here.get(i).equals(there.get(i)))
                .toArray();
        return moved.length == 1
                ? Optional.of(new Odd(figure, moved[0], there.get(moved[0]), usual.bar()))
                : Optional.empty();
    }

    /** Dead notes come and go, slurs take their time, and with a chord inside the bar the rhythm may change. */
    private static boolean mayVary(Evidence evidence, Odd odd) {
        var note = odd.figure().notes().get(odd.note());
        var at = odd.figure().at(odd.note());
        return note.isDead()
                || note.arrival().isPresent()
                || MeantVariation.isTurn(evidence, at)
                || MeantVariation.isAfterChange(evidence, at);
    }

    private static List<Fraction> onsets(Figure figure) {
        return figure.notes().stream().map(Note::onset).toList();
    }

    private static Optional<Finding> finding(Evidence evidence, Odd odd) {
        return evidence.find(odd.figure().at(odd.note()))
                .map(note -> Finding.of(
                        evidence,
                        "figure-at-another-time",
                        Severity.WORTH_A_LOOK,
                        List.of(note),
                        odd.bar(),
                        FiguresKeepTheirShape.count(note, odd.expected())));
    }
}
