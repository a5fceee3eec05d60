package groundbass.web.desk.script;

import groundbass.script.Statement;
import groundbass.script.checking.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/** Cuts a script at the ends of its statements. Where statements overlap, the worst verdict shows. */
final class ScriptPieces {
    private ScriptPieces() {}

    /** What a piece of text is part of, from good to bad. */
    public enum Kind {
        PLAIN,
        AGREES,
        /** What was read of it agrees. */
        PART,
        UNTOLD,
        WRONG
    }

    /**
     * A piece of the script.
     *
     * @param number of the contradiction that it belongs to; 0 for none
     * @param first  whether it is the first piece of that contradiction
     */
    public record Piece(String text, Kind kind, int number, boolean first) {
        /** The end of its class and of its message key. */
        public String name() {
            return kind.name().toLowerCase(Locale.ROOT);
        }
    }

    private record Marked(int from, int to, Kind kind, int number) {}

    static List<Piece> of(String text, List<Statement> statements) {
        var marked = new ArrayList<Marked>();
        int number = 0;
        for (var statement : statements) {
            number += statement.contradicts() ? 1 : 0;
            marked.add(new Marked(
                    statement.from(), statement.to(), kind(statement), statement.contradicts() ? number : 0));
        }
        return pieces(text, marked);
    }

    private static Kind kind(Statement statement) {
        if (statement.contradicts()) {
            return Kind.WRONG;
        }
        if (statement.isReadInPart()) {
            return Kind.PART;
        }
        return statement.verdict() instanceof Verdict.Agrees ? Kind.AGREES : Kind.UNTOLD;
    }

    /** Statements come by where they begin, and none is longer than a sentence, so a short look back is enough. */
    private static List<Piece> pieces(String text, List<Marked> marked) {
        var edges = new TreeSet<Integer>(List.of(0, text.length()));
        marked.forEach(mark -> edges.addAll(List.of(mark.from(), mark.to())));
        var pieces = new ArrayList<Piece>();
        var open = new ArrayList<Marked>();
        int next = 0;
        int shown = 0;
        Integer from = edges.pollFirst();
        for (int to : edges) {
            int start = from;
            open.removeIf(mark -> mark.to() <= start);
            while (next < marked.size() && marked.get(next).from() <= start) {
                open.add(marked.get(next++));
            }
            var worst = open.stream()
                    .max(Comparator.comparing(Marked::kind)
                            .thenComparing(Comparator.comparing(Marked::number).reversed()))
                    .orElse(new Marked(start, to, Kind.PLAIN, 0));
            boolean first = worst.number() > shown;
            shown = Math.max(shown, worst.number());
            pieces.add(new Piece(text.substring(start, to), worst.kind(), worst.number(), first));
            from = to;
        }
        return pieces;
    }
}
