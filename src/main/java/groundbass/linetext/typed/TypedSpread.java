package groundbass.linetext.typed;

import groundbass.remark.Span;
import groundbass.score.Ornaments.Spread;
import java.util.Objects;

/** {@code roll}, {@code roll down}, {@code bracket}: how the notes of an event follow one another. */
public record TypedSpread(Span span, Spread spread) {
    public TypedSpread {
        Objects.requireNonNull(span);
        Objects.requireNonNull(spread);
    }
}
