package groundbass.linetext.read;

import groundbass.linetext.problem.EventProblems;
import groundbass.linetext.problem.Nearest;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Token;
import groundbass.linetext.source.Tokens;
import groundbass.linetext.source.TypedNumbers;
import groundbass.linetext.typed.Event;
import groundbass.linetext.typed.Event.Item;
import groundbass.linetext.typed.Event.Played;
import groundbass.linetext.typed.Event.StringRef;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads one event: places joined with {@code +}, each with its words, up to the next comma. */
final class EventReader {
    private static final List<String> ITEMS = List.of("rest", "hold");

    private final Tokens tokens;
    private final Problems problems;
    private final EventWordReader words;
    private final List<Item> items = new ArrayList<>();
    private boolean rest;

    EventReader(Tokens tokens, Problems problems) {
        this.tokens = tokens;
        this.problems = problems;
        this.words = new EventWordReader(tokens, problems);
    }

    Event read() {
        var start = tokens.here();
        do {
            item();
        } while (tokens.takeMark("+"));
        if (rest && !items.isEmpty()) {
            problems.add(EventProblems.restWithPlaces(start.to(tokens.last())));
        }
        return words.event(start.to(tokens.last()), shared());
    }

    private void item() {
        var typed = tokens.take(token -> token.kind() == Token.Kind.WORD);
        if (typed.isEmpty()) {
            problems.add(
                    tokens.sees(EventWordReader::isNoBorder)
                            ? EventProblems.unreadable(skipped())
                            : EventProblems.noPlace(tokens.here()));
            return;
        }
        var token = typed.get();
        if (token.isWord("rest")) {
            rest = true;
            words.readForRest();
        } else if (token.isWord("hold")) {
            items.add(words.readForHold(token.span(), Optional.empty()));
        } else if (token.isWord("=") || token.isWord("as")) {
            copy(token);
        } else {
            place(token);
        }
    }

    /** What no place begins with; all that stands behind it is part of the same mistake. */
    private Token skipped() {
        var first = tokens.take().orElseThrow();
        while (tokens.sees(EventWordReader::isNoBorder)) {
            tokens.take();
        }
        return first;
    }

    /** A bar is taken over in its head; what stands behind the sign here is read as one mistake. */
    private void copy(Token sign) {
        while (!tokens.atEnd()) {
            tokens.take();
        }
        problems.add(EventProblems.copyInCount(sign.span().to(tokens.last())));
    }

    private void place(Token token) {
        var parts = PlaceParts.of(token.text());
        if (parts.isEmpty()) {
            problems.add(EventProblems.noSuchPlace(token, Nearest.to(token.text(), ITEMS)));
            words.readForPlace();
        } else if (parts.get().fret().isEmpty()) {
            bareString(token, new StringRef(token.span(), parts.get().string()));
        } else {
            var string = new StringRef(token.span(), parts.get().string());
            items.add(new Played(token.span(), string, parts.get().fret(), words.readForPlace()));
        }
    }

    /** {@code E hold}: one string's sound goes on. */
    private void bareString(Token token, StringRef string) {
        var hold = tokens.take(next -> next.isWord("hold"));
        var fret = tokens.take(
                next -> next.isWord("x") || TypedNumbers.whole(next.text()).isPresent());
        if (hold.isPresent()) {
            items.add(words.readForHold(token.span().to(hold.get().span()), Optional.of(string)));
        } else if (fret.isPresent()) {
            var span = token.span().to(fret.get().span());
            problems.add(EventProblems.apart(span, token.text() + fret.get().text()));
            items.add(new Played(
                    span, new StringRef(span, string.text()), fret.get().text(), words.readForPlace()));
        } else {
            problems.add(EventProblems.noFret(token));
            words.readForPlace();
        }
    }

    /** Words at the end belong to every place that has none of its own. */
    private List<Item> shared() {
        if (items.size() < 2 || !(items.get(items.size() - 1) instanceof Played last)) {
            return items;
        }
        return items.stream()
                .map(item ->
                        item instanceof Played played && played.words().isNone() ? played.with(last.words()) : item)
                .toList();
    }

    /** Whether this names a string and a fret. */
    static boolean isPlace(Token token) {
        return PlaceParts.of(token.text())
                .filter(parts -> !parts.fret().isEmpty())
                .isPresent();
    }

    /** A place cut into its string and its fret, {@code x} for a dead string, empty for a bare string. */
    private record PlaceParts(String string, String fret) {
        static Optional<PlaceParts> of(String text) {
            return text.startsWith("s") ? numbered(text) : named(text);
        }

        private static Optional<PlaceParts> numbered(String text) {
            int end = digitsEnd(text, 1);
            String string = text.substring(0, end);
            String rest = text.substring(end);
            boolean fretted = rest.length() > 1 && rest.charAt(0) == 'f' && digitsEnd(rest, 1) == rest.length();
            boolean readable = end > 1 && (fretted || rest.isEmpty() || rest.equals("x"));
            return readable
                    ? Optional.of(new PlaceParts(string, fretted ? rest.substring(1) : rest))
                    : Optional.empty();
        }

        private static Optional<PlaceParts> named(String text) {
            boolean letter = text.charAt(0) >= 'A' && text.charAt(0) <= 'G';
            int end = 1;
            while (end < text.length() && end < 3 && "#b".indexOf(text.charAt(end)) >= 0) {
                end++;
            }
            String rest = text.substring(end);
            boolean fret = digitsEnd(rest, 0) == rest.length() || rest.equals("x");
            return letter && fret ? Optional.of(new PlaceParts(text.substring(0, end), rest)) : Optional.empty();
        }

        private static int digitsEnd(String text, int from) {
            int end = from;
            while (end < text.length() && text.charAt(end) >= '0' && text.charAt(end) <= '9') {
                end++;
            }
            return end;
        }
    }
}
