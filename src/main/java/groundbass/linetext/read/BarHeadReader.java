package groundbass.linetext.read;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Moment;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.linetext.typed.RawBar.Copied;
import groundbass.linetext.typed.RawBar.Head;
import groundbass.linetext.typed.RawBar.Numbered;
import groundbass.linetext.typed.RawBar.TypedChord;
import groundbass.linetext.typed.RawBar.Until;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Reads {@code bar N = bar M counts a-b, one string higher until COUNT over CHORD, CHORD at COUNT}; each part may be left
 * out, and {@code as} says the same as the sign.
 */
final class BarHeadReader {
    private final Tokens tokens;
    private final Problems problems;

    private Optional<Numbered> number = Optional.empty();
    private Optional<Copied> copied = Optional.empty();
    private Optional<Until> until = Optional.empty();
    private Optional<List<TypedChord>> chords = Optional.empty();

    BarHeadReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    Head read() {
        var here = tokens.here();
        number = tokens.take(token -> TypedNumbers.whole(token.text()).isPresent())
                .flatMap(token -> TypedNumbers.whole(token.text()))
                .map(n -> new Numbered(here, n));
        while (!tokens.atEnd()) {
            part();
        }
        return new Head(tokens.whole(), number, copied, until, chords);
    }

    private void part() {
        if (tokens.takeMark("=") || tokens.takeWord("as")) {
            copied = copied();
        } else if (tokens.takeWord("until")) {
            until = until();
        } else if (tokens.takeWord("over")) {
            chords = Optional.of(chords());
        } else {
            problems.add(BarProblems.unknownPart(tokens.take().orElseThrow()));
        }
    }

    private Optional<Copied> copied() {
        var start = tokens.last();
        boolean bar = tokens.takeWord("bar");
        var typed = tokens.take(token -> TypedNumbers.whole(token.text()).isPresent());
        var source = typed.flatMap(token -> TypedNumbers.whole(token.text()));
        if (!bar || source.isEmpty()) {
            problems.add(BarProblems.badCopy(start.to(tokens.last())));
            return Optional.empty();
        }
        Optional<Target> counts = Optional.empty();
        if (tokens.takeWord("counts") || tokens.takeWord("count")) {
            counts = tokens.take(token -> Targets.parse(token).isPresent()).flatMap(Targets::parse);
            if (counts.isEmpty()) {
                problems.add(BarProblems.badCopyCounts(tokens.here()));
                skipValue();
            }
        }
        var unmoved = start.to(tokens.last());
        var shift = new ShiftReader(tokens, problems).read();
        return Optional.of(new Copied(start.to(tokens.last()), unmoved, source.get(), counts, shift));
    }

    /** What stands where a value should, unless another part begins with it, so that it is complained of once. */
    private void skipValue() {
        tokens.take(token -> token.kind() == Token.Kind.WORD && !ShiftReader.canFollow(token));
    }

    private Optional<Until> until() {
        var here = tokens.here();
        var moment = Moment.read(tokens).filter(found -> found.part().isZero());
        if (moment.isEmpty()) {
            problems.add(BarProblems.badUntil(here));
            skipValue();
        }
        return moment.map(found -> new Until(here, found));
    }

    /** {@code none} says that a copied bar does not take the chords along. */
    private List<TypedChord> chords() {
        var found = new ArrayList<TypedChord>();
        if (tokens.takeWord("none")) {
            return found;
        }
        do {
            chord().ifPresent(found::add);
        } while (tokens.takeMark(","));
        return found;
    }

    private Optional<TypedChord> chord() {
        var typed = tokens.take(token -> token.kind() == Token.Kind.WORD);
        if (typed.isEmpty()) {
            problems.add(BarProblems.noChord(tokens.here()));
            return Optional.empty();
        }
        var symbol = ChordSymbol.parse(typed.get().text());
        if (symbol.isEmpty()) {
            problems.add(BarProblems.unknownChord(typed.get()));
        }
        Optional<Moment> at = Optional.empty();
        if (tokens.takeWord("at")) {
            at = Moment.read(tokens);
            if (at.isEmpty()) {
                problems.add(BarProblems.badChordCount(tokens.here()));
                return Optional.empty();
            }
        }
        var when = at;
        return symbol.map(chord -> new TypedChord(typed.get().span(), chord, when));
    }
}
