package groundbass.linetext.typed;

import groundbass.linetext.source.Moment;
import groundbass.remark.Span;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Dynamic;
import java.util.List;
import java.util.Optional;

/** What is played at one time, as typed. An event without items is a rest. */
public record Event(
        Span span,
        List<Item> items,
        int shares,
        Optional<Dynamic> dynamic,
        Optional<Hairpin.Way> hairpin,
        Optional<TypedSpread> spread,
        List<String> texts) {

    /** One place of an event, or a sound that goes on. */
    public sealed interface Item {
        Span span();
    }

    /** A string and a fret in figures, or {@code x} for a dead string. */
    public record Played(Span span, StringRef string, String fret, PlaceWords words) implements Item {
        public Played with(PlaceWords newWords) {
            return new Played(span, string, fret, newWords);
        }
    }

    /** {@code hold}: a sound that goes on, on one string or on all that sound until now. */
    public record Held(Span span, Optional<StringRef> string, Optional<Until> until) implements Item {}

    /** How a string is named: by a letter, or by its number. */
    public record StringRef(Span span, String text) {}

    /** Where a sound ends that lasts longer than its event; without a moment at the end of the bar. */
    public record Until(Span span, Optional<Moment> moment) {}
}
