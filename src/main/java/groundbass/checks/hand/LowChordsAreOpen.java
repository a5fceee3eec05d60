package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Tuning;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Thirds and less are muddy low down: here below E2 (rule: low-thirds). */
final class LowChordsAreOpen implements Rule {
    private static final int E2 = 40;
    private static final int MAJOR_THIRD = 4;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var notes = evidence.notes();
        return IntStream.range(1, notes.size())
                .filter(i -> isMuddy(evidence.line().header().tuning(), notes.get(i - 1), notes.get(i)))
                .mapToObj(i -> Finding.of(
                        evidence, "low-chord-close", Severity.WORTH_A_LOOK, List.of(notes.get(i - 1), notes.get(i))));
    }

    private static boolean isMuddy(Tuning tuning, Played one, Played other) {
        OptionalInt first = one.note().midi(tuning);
        OptionalInt second = other.note().midi(tuning);
        if (first.isEmpty()
                || second.isEmpty()
                || !one.timed().when().at().equals(other.timed().when().at())) {
            return false;
        }
        int apart = Math.abs(first.getAsInt() - second.getAsInt());
        return apart > 0 && apart <= MAJOR_THIRD && Math.min(first.getAsInt(), second.getAsInt()) < E2;
    }
}
