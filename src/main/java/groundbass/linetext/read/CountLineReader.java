package groundbass.linetext.read;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.typed.CountLine;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.linetext.typed.Event;
import groundbass.score.Count;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads {@code 1 2   E5*3, D7}: counts, then events with commas between them. */
final class CountLineReader {
    private final Tokens tokens;
    private final Problems problems;

    CountLineReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    /** Empty where not even a count is readable. */
    Optional<CountLine> read() {
        var targets = targets();
        var events = events();
        long shares = events.stream().mapToLong(Event::shares).sum();
        if (shares > Limits.MOST_SHARES) {
            problems.add(EventProblems.tooManyShares(tokens.whole()));
            events = List.of();
        }
        return targets.isEmpty() ? Optional.empty() : Optional.of(new CountLine(tokens.whole(), targets, events));
    }

    private List<Target> targets() {
        var targets = new ArrayList<Target>();
        while (tokens.sees(
                token -> looksLikeCount(token) && (targets.isEmpty() || !EventProblems.isFretFirst(token)))) {
            var token = tokens.take().orElseThrow();
            Targets.parse(token)
                    .map(this::half)
                    .ifPresentOrElse(targets::add, () -> problems.add(EventProblems.badCount(token)));
        }
        return targets;
    }

    /** {@code 1+} is how many write {@code 1&} by hand. */
    private Target half(Target typed) {
        if (!tokens.takeMark("+")) {
            return typed;
        }
        problems.add(EventProblems.plusForAnd(tokens.last(), typed.from().toString()));
        return Count.parse(typed.from() + "&")
                .filter(half -> typed.last().isEmpty())
                .map(half -> new Target(typed.span(), half, Optional.empty()))
                .orElse(typed);
    }

    private static boolean looksLikeCount(Token token) {
        return token.kind() == Token.Kind.WORD && Character.isDigit(token.text().charAt(0));
    }

    /** A comma too many holds no event; the others keep their shares. */
    private List<Event> events() {
        var events = new ArrayList<Event>();
        if (tokens.atEnd()) {
            problems.add(EventProblems.noEvents(tokens.here()));
            return events;
        }
        do {
            if (tokens.atEnd() || tokens.seesMark(",")) {
                problems.add(EventProblems.emptyEvent(tokens.here()));
            } else {
                events.add(new EventReader(tokens, problems).read());
            }
        } while (tokens.takeMark(","));
        return events;
    }
}
