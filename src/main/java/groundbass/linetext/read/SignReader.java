package groundbass.linetext.read;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Nearest;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.problem.TextProblems;
import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.RawBar;
import groundbass.linetext.typed.RawBar.Before;
import groundbass.linetext.typed.RawBar.Sign;
import groundbass.remark.Span;
import groundbass.score.Passes;
import groundbass.score.Repeats;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.score.Roadmap;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Roadmap.Until;
import java.util.List;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** Reads repeat signs, endings and the signs of jumps: some stand before a bar, some after one. */
final class SignReader {
    private final Tokens tokens;
    private final Problems problems;
    private final Before next;
    private final Optional<RawBar> current;

    SignReader(Tokens tokens, Problems problems, Before next, Optional<RawBar> current) {
        this.tokens = tokens;
        this.problems = problems;
        this.next = next;
        this.current = current;
    }

    void read(Keyword word) {
        switch (word) {
            case REPEAT -> repeat();
            case ENDING -> ending();
            case SEGNO -> put(next, Sign.SEGNO, roadmap(Roadmap::withSegno));
            case CODA -> put(next, Sign.CODA, roadmap(Roadmap::withCoda));
            case FINE -> after("fine", Sign.FINE, roadmap(Roadmap::withFine));
            case TO -> toCoda();
            case DA -> jump(From.CAPO, "capo");
            case DAL -> jump(From.SEGNO, "segno");
            default -> throw new IllegalArgumentException("no sign: " + word);
        }
        tokens.take().ifPresent(extra -> problems.add(TextProblems.leftOver(extra.span(), extra.text())));
    }

    private void repeat() {
        if (tokens.takeWord("start")) {
            put(next, Sign.START, Repeats::withStart);
        } else if (tokens.takeWord("end")) {
            times().ifPresent(end -> after("repeat end", Sign.END, signs -> signs.with(end)));
        } else {
            problems.add(Nearest.to(tokens.take().map(Token::text).orElse(""), List.of("start", "end"))
                    .map(near -> BarProblems.badRepeat(tokens.last()).suggesting("repeat " + near))
                    .orElseGet(() -> BarProblems.badRepeat(tokens.last())));
        }
    }

    private Optional<RepeatEnd> times() {
        var typed = tokens.take();
        if (typed.isEmpty()) {
            return Optional.of(RepeatEnd.PLAIN);
        }
        String text = typed.get().text();
        var times = TypedNumbers.whole(text.isEmpty() ? "" : text.substring(1))
                .filter(n -> "x*".indexOf(text.charAt(0)) >= 0 && n >= 2 && n <= Passes.MOST_PASSES);
        if (times.isEmpty()) {
            problems.add(BarProblems.badTimes(typed.get().span(), Passes.MOST_PASSES)
                    .suggesting(TypedNumbers.whole(text).map(n -> "x" + n)));
        }
        return Optional.of(new RepeatEnd(times));
    }

    private void ending() {
        if (tokens.takeWord("end")) {
            after("ending end", Sign.ENDING_END, Repeats::withEndingEnd);
            return;
        }
        var here = tokens.here();
        String text = tokens.take().map(Token::text).orElse("");
        int dash = text.indexOf('-');
        var first = TypedNumbers.whole(dash < 0 ? text : text.substring(0, dash));
        var last = TypedNumbers.whole(text.substring(dash + 1));
        if (first.isEmpty() || last.isEmpty() || !Ending.isPasses(first.get(), last.get())) {
            problems.add(BarProblems.badEnding(here, Passes.MOST_PASSES));
            return;
        }
        put(next, Sign.ENDING, signs -> signs.with(new Ending(first.get(), last.get())));
    }

    private void toCoda() {
        if (tokens.takeWord("coda")) {
            after("to coda", Sign.TO_CODA, roadmap(Roadmap::withToCoda));
        } else {
            problems.add(BarProblems.badToCoda(wholeLine()));
        }
    }

    /** As far as {@code da} or {@code dal} was read. */
    private void jump(From from, String where) {
        if (!tokens.takeWord(where)) {
            problems.add(BarProblems.badJump(wholeLine(), from));
            return;
        }
        var until = Until.END;
        if (tokens.takeWord("al")) {
            var far = tokens.takeWord("fine")
                    ? Optional.of(Until.FINE)
                    : tokens.takeWord("coda") ? Optional.of(Until.CODA) : Optional.<Until>empty();
            if (far.isEmpty()) {
                problems.add(BarProblems.badJump(wholeLine(), from));
                return;
            }
            until = far.get();
        }
        var jump = new Jump(from, until);
        after(jump.words(), Sign.JUMP, roadmap(map -> map.with(jump)));
    }

    /** What cannot be read as a jump is one mistake. */
    private Span wholeLine() {
        while (tokens.take().isPresent()) {}
        return tokens.whole();
    }

    private static UnaryOperator<Repeats> roadmap(UnaryOperator<Roadmap> change) {
        return signs -> signs.with(change.apply(signs.roadmap()));
    }

    private void after(String what, Sign sign, UnaryOperator<Repeats> change) {
        current.ifPresentOrElse(
                bar -> put(bar.before, sign, change),
                () -> problems.add(BarProblems.nothingBefore(tokens.whole(), what)));
    }

    private void put(Before before, Sign sign, UnaryOperator<Repeats> change) {
        var first = before.signs.putIfAbsent(sign, tokens.whole());
        if (first == null) {
            before.repeats = change.apply(before.repeats);
        } else {
            problems.add(BarProblems.signTwice(tokens.whole(), first));
        }
    }
}
