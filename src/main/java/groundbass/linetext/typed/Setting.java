package groundbass.linetext.typed;

import groundbass.linetext.source.Keyword;
import groundbass.remark.Span;
import groundbass.score.Changes;
import groundbass.score.Header;
import groundbass.score.Meter;
import java.util.function.BiFunction;
import java.util.function.UnaryOperator;

/**
 * One line such as {@code tempo 96}, read: what it does to the header, and to the changes before a bar in whose meter
 * it stands.
 */
public record Setting(Keyword word, Span span, UnaryOperator<Header> head, BiFunction<Changes, Meter, Changes> change) {

    public static Setting ofHead(Keyword word, Span span, UnaryOperator<Header> head) {
        return new Setting(word, span, head, (changes, meter) -> changes);
    }

    public static Setting ofBar(Keyword word, Span span, UnaryOperator<Changes> change) {
        return new Setting(word, span, UnaryOperator.identity(), (changes, meter) -> change.apply(changes));
    }
}
