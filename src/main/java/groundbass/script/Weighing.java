package groundbass.script;

import groundbass.script.checking.Right;
import groundbass.script.checking.Verdict;
import groundbass.script.thread.talk.HeardClause;
import java.util.ArrayList;
import java.util.List;

/**
 * Weighs what was understood to the last word against what was merely picked out of a sentence. Only the former can
 * agree: where a part of a sentence was not read, what agrees agrees in part.
 */
final class Weighing {
    private Weighing() {}

    /**
     * @param heard the clauses of a sentence
     * @param picked statements found in it without regard to the rest of its words
     * @param apart whether each clause stands for itself, since nobody wrote where sentences end
     */
    static List<Statement> of(List<HeardClause> heard, List<Statement> picked, boolean apart) {
        boolean wholly = heard.stream().filter(HeardClause::musical).allMatch(Weighing::isSure);
        var statements = new ArrayList<Statement>();
        for (int i = 0; i < heard.size(); i++) {
            var clause = heard.get(i);
            boolean read = apart ? isFirm(heard, i - 1) && isFirm(heard, i + 1) : wholly;
            clause.verdict()
                    .map(verdict -> verdict instanceof Verdict.Agrees && !read ? Verdict.IN_PART : verdict)
                    .ifPresent(verdict ->
                            statements.add(new Statement(clause.from(), clause.to(), verdict, clause.position())));
        }
        for (var statement : picked) {
            var around = heard.stream()
                    .filter(clause -> clause.from() < statement.to() && statement.from() < clause.to())
                    .filter(clause -> clause.musical() || apart || clause.asked())
                    .toList();
            boolean known = apart
                    ? around.stream().anyMatch(Weighing::isSure)
                    : !around.isEmpty() && around.stream().allMatch(Weighing::isSure);
            boolean torn = around.size() > 1 && isNameOfPlace(statement); // name and fret in two breaths
            boolean doubtful = statement.contradicts()
                    && (torn
                            || isAstray(statement, around)
                            || around.stream()
                                    .anyMatch(clause -> clause.asked() || isInPart(clause) || isOpen(clause)));
            if (!known && !doubtful) {
                statements.add(statement.agrees() ? inPart(statement) : statement);
            }
        }
        return statements;
    }

    /** Whether a clause's neighbour was understood too, so that nothing was cut off between them. */
    private static boolean isFirm(List<HeardClause> heard, int i) {
        return i < 0 || i >= heard.size() || isSure(heard.get(i));
    }

    private static Statement inPart(Statement statement) {
        return new Statement(statement.from(), statement.to(), Verdict.IN_PART, statement.position());
    }

    /** Whether the talk is in another bar there than the one that the statement was taken to speak of. */
    private static boolean isAstray(Statement statement, List<HeardClause> around) {
        return statement
                .position()
                .filter(at -> !around.isEmpty()
                        && around.stream().allMatch(clause -> clause.position()
                                .filter(other -> other.bar() != at.bar())
                                .isPresent()))
                .isPresent();
    }

    private static boolean isNameOfPlace(Statement statement) {
        return statement.verdict() instanceof Verdict.Contradicts wrong && wrong.right() instanceof Right.NameOfPlace;
    }

    /** Whether what was understood of it is so. */
    private static boolean isInPart(HeardClause clause) {
        return clause.verdict().filter(Verdict.InPart.class::isInstance).isPresent();
    }

    /** Whether it was understood, and can be so and not so. */
    private static boolean isOpen(HeardClause clause) {
        return clause.verdict().filter(Verdict.CannotTell.class::isInstance).isPresent();
    }

    private static boolean isSure(HeardClause clause) {
        return clause.verdict()
                .filter(verdict -> !(verdict instanceof Verdict.CannotTell))
                .isPresent();
    }
}
