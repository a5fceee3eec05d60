package groundbass.linetext.read;

import groundbass.linetext.source.Token;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.score.Count;
import java.util.Optional;

/** Reads a count or a span of counts: {@code 2&}, {@code 1-4}, {@code 2&-3}. */
final class Targets {
    private Targets() {}

    static Optional<Target> parse(Token token) {
        String text = token.text();
        int dash = text.indexOf('-');
        if (dash < 0) {
            return Count.parse(text).map(count -> new Target(token.span(), count, Optional.empty()));
        }
        var last = Count.parse(text.substring(dash + 1));
        return Count.parse(text.substring(0, dash))
                .filter(from -> last.isPresent())
                .map(from -> new Target(token.span(), from, last));
    }
}
