package groundbass.linetext.read;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.Event.Held;
import groundbass.linetext.typed.Event.Item;
import groundbass.linetext.typed.Event.StringRef;
import groundbass.linetext.typed.Event.Until;
import groundbass.linetext.typed.PlaceWords;
import groundbass.linetext.typed.TypedSpread;
import groundbass.remark.Span;
import groundbass.score.Direction;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Dynamic;
import groundbass.score.Ornaments.Spread;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Reads the words of one event: those of the whole event itself, those of one place by {@link PlaceWordReader}. */
final class EventWordReader {
    private static final List<String> DYNAMICS =
            Arrays.stream(Dynamic.values()).map(Dynamic::toString).toList();

    private static final List<String> HAIRPINS =
            Arrays.stream(Hairpin.Way.values()).map(Hairpin.Way::word).toList();

    private final Tokens tokens;
    private final Problems problems;
    private final List<String> texts = new ArrayList<>();
    private Optional<Integer> shares = Optional.empty();
    private Optional<Dynamic> dynamic = Optional.empty();
    private Optional<Hairpin.Way> hairpin = Optional.empty();
    private Optional<TypedSpread> spread = Optional.empty();

    EventWordReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
    }

    Event event(Span span, List<Item> items) {
        return new Event(span, List.copyOf(items), shares.orElse(1), dynamic, hairpin, spread, List.copyOf(texts));
    }

    PlaceWords readForPlace() {
        var reader = new PlaceWordReader(tokens, problems);
        while (tokens.sees(EventWordReader::isNoBorder)) {
            if (!readOwn() && !readSpread()) {
                reader.word(tokens.take().orElseThrow());
            }
        }
        return reader.words();
    }

    void readForRest() {
        while (tokens.sees(EventWordReader::isNoBorder)) {
            if (!readOwn()) {
                problems.add(EventProblems.notForRest(tokens.take().orElseThrow()));
            }
        }
    }

    Held readForHold(Span span, Optional<StringRef> string) {
        Optional<Until> until = Optional.empty();
        while (tokens.sees(EventWordReader::isNoBorder)) {
            if (tokens.takeWord("until")) {
                until = PlaceWordReader.until(tokens, problems);
            } else if (!readOwn()) {
                problems.add(EventProblems.notForHold(tokens.take().orElseThrow()));
            }
        }
        return new Held(span, string, until);
    }

    /** Takes what is said of the notes of a chord together. */
    private boolean readSpread() {
        boolean roll = tokens.takeWord("roll");
        if (!roll && !tokens.takeWord("bracket")) {
            return false;
        }
        var word = tokens.last();
        var found = roll ? rolled() : Spread.BRACKET;
        var typed = new TypedSpread(word.to(tokens.last()), found);
        if (spread.isEmpty()) {
            spread = Optional.of(typed);
        } else {
            String before = spread.get().spread().words();
            problems.add(EventProblems.twoOfAKind(typed.span(), found.words(), before));
        }
        return true;
    }

    private Spread rolled() {
        if (tokens.takeWord("up")) {
            return Spread.ROLL_UP;
        }
        return tokens.takeWord("down") ? Spread.ROLL_DOWN : Spread.ROLL;
    }

    static boolean isNoBorder(Token token) {
        return !token.isMark(",") && !token.isMark("+");
    }

    /** Takes what speaks for the whole event: its shares, a loudness, a hairpin, a text. */
    private boolean readOwn() {
        if (tokens.takeWord("for") || tokens.takeMark("*")) {
            readShares();
            return true;
        }
        var text = tokens.take(token -> token.kind() == Token.Kind.QUOTED);
        text.ifPresent(this::addText);
        if (text.isPresent()) {
            return true;
        }
        var loudness = tokens.take(token -> DYNAMICS.contains(token.text()));
        loudness.ifPresent(this::setDynamic);
        var growing =
                loudness.isPresent() ? Optional.<Token>empty() : tokens.take(token -> HAIRPINS.contains(token.text()));
        growing.ifPresent(this::setHairpin);
        return loudness.isPresent() || growing.isPresent();
    }

    /** {@code for 2}; a star says the same. */
    private void readShares() {
        var word = tokens.last();
        var number = tokens.take(token -> token.kind() == Token.Kind.WORD);
        var count = number.flatMap(token -> TypedNumbers.whole(token.text())).filter(n -> n >= 1);
        var span = word.to(tokens.last());
        if (count.isEmpty()) {
            problems.add(EventProblems.badShares(span));
        } else if (shares.isPresent()) {
            problems.add(EventProblems.twice(span, "for " + count.get()));
        } else {
            shares = count;
        }
    }

    private void addText(Token token) {
        if (!Direction.Words.isText(token.text())) {
            problems.add(EventProblems.badText(token.span()));
        } else if (texts.contains(token.text())) {
            problems.add(EventProblems.twice(token.span(), token.text()));
        } else {
            texts.add(token.text());
        }
    }

    private void setDynamic(Token token) {
        if (dynamic.isPresent()) {
            problems.add(EventProblems.twoOfAKind(token, dynamic.get().toString()));
        } else {
            dynamic = Optional.of(Dynamic.values()[DYNAMICS.indexOf(token.text())]);
        }
    }

    private void setHairpin(Token token) {
        if (hairpin.isPresent()) {
            problems.add(EventProblems.twoOfAKind(token, hairpin.get().word()));
        } else {
            hairpin = Optional.of(Hairpin.Way.values()[HAIRPINS.indexOf(token.text())]);
        }
    }
}
