package groundbass.linetext.read;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.NumberWords;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.remark.Span;
import groundbass.score.Place;
import groundbass.score.Shift;
import groundbass.score.Tuning;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Reads how far a bar is moved that is taken over: {@code one string higher}, {@code two frets down}, each at most once. */
final class ShiftReader {
    private static final Set<String> STRINGS = Set.of("string", "strings");
    private static final Set<String> FRETS = Set.of("fret", "frets");

    /** What may stand behind it in the head of a bar. */
    private static final Set<String> NEXT = Set.of("until", "over");

    private final Tokens tokens;
    private final Problems problems;
    private OptionalInt strings = OptionalInt.empty();
    private OptionalInt frets = OptionalInt.empty();

    ShiftReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    /** A comma may stand before each part; nothing is moved where no part stands here. */
    Shift read() {
        boolean more = true;
        while (more && (tokens.seesMark(",") || tokens.sees(ShiftReader::isNumber))) {
            tokens.takeMark(",");
            more = part();
        }
        return new Shift(strings.orElse(0), frets.orElse(0));
    }

    /** Whether a part of a bar's head may begin with it. */
    static boolean canFollow(Token token) {
        return isNumber(token) || NEXT.contains(token.text());
    }

    private static boolean isNumber(Token token) {
        return token.kind() == Token.Kind.WORD
                && NumberWords.parse(token.text()).isPresent();
    }

    /** @return whether it could be read */
    private boolean part() {
        var start = tokens.here();
        var amount = tokens.take(ShiftReader::isNumber).flatMap(token -> NumberWords.parse(token.text()));
        if (amount.isEmpty()) {
            tokens.take(token -> token.kind() == Token.Kind.WORD && !NEXT.contains(token.text()));
            return refused(start);
        }
        var unit = tokens.take(token -> STRINGS.contains(token.text()) || FRETS.contains(token.text()));
        var way = unit.flatMap(found -> tokens.take(token -> token.kind() == Token.Kind.WORD));
        var span = start.to(tokens.last());
        return unit.isPresent() && way.isPresent()
                ? part(span, amount.get(), unit.get().text(), way.get().text())
                : refused(span);
    }

    private boolean refused(Span span) {
        problems.add(BarProblems.badShift(span));
        return false;
    }

    private boolean part(Span span, int amount, String unit, String way) {
        boolean ofStrings = STRINGS.contains(unit);
        int most = ofStrings ? Tuning.MOST_STRINGS - 1 : Place.Fretted.MOST_FRETS;
        var sign = sign(way, ofStrings);
        if (amount > most || (ofStrings ? strings : frets).isPresent()) {
            return refused(span);
        }
        if (sign.isEmpty()) {
            problems.add(BarProblems.badShiftWay(span, NumberWords.of(amount) + " " + unit, way, ofStrings));
            return false;
        }
        var read = OptionalInt.of(amount * sign.get());
        strings = ofStrings ? read : strings;
        frets = ofStrings ? frets : read;
        return true;
    }

    private static Optional<Integer> sign(String way, boolean ofStrings) {
        if (way.equals(ofStrings ? "higher" : "up")) {
            return Optional.of(1);
        }
        return way.equals(ofStrings ? "lower" : "down") ? Optional.of(-1) : Optional.empty();
    }
}
