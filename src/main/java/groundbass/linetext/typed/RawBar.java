package groundbass.linetext.typed;

import groundbass.linetext.source.Moment;
import groundbass.remark.Span;
import groundbass.score.Repeats;
import groundbass.score.Shift;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One bar as typed, before anything in it is given a time: filled line by line, then read once. */
public final class RawBar {
    public final Head head;
    public final Before before;
    public final List<CountLine> counts = new ArrayList<>();

    /** Whether part of it could not be read, so that what is left unsaid is no news. */
    public boolean unread;

    public RawBar(Head head, Before before) {
        this.head = head;
        this.before = before;
    }

    /** The line that begins a bar. Chords are absent where none were said: a copied bar then has those it copies. */
    public record Head(
            Span span,
            Optional<Numbered> number,
            Optional<Copied> copied,
            Optional<Until> until,
            Optional<List<TypedChord>> chords) {
        public static Head plain(Span span) {
            return new Head(span, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    public record Numbered(Span span, int number) {}

    /**
     * Another bar that is taken over.
     *
     * @param unmoved how it would be said without the shift
     */
    public record Copied(Span span, Span unmoved, int bar, Optional<CountLine.Target> counts, Shift shift) {}

    public record Until(Span span, Moment moment) {}

    public record TypedChord(Span span, ChordSymbol chord, Optional<Moment> at) {}

    /** The signs at a bar, each on a line of its own. */
    public enum Sign {
        START,
        ENDING,
        ENDING_END,
        END,
        SEGNO,
        CODA,
        TO_CODA,
        FINE,
        JUMP
    }

    /** What stands on lines of their own before a bar, and the signs after it. */
    public static final class Before {
        public final List<Setting> settings = new ArrayList<>();
        public final Map<Sign, Span> signs = new EnumMap<>(Sign.class);
        public Repeats repeats = Repeats.NONE;

        public boolean isEmpty() {
            return settings.isEmpty() && signs.isEmpty();
        }

        /** Where the first thing said stands. */
        public Optional<Span> first() {
            return Stream.concat(settings.stream().map(Setting::span), signs.values().stream())
                    .min(Span::compareTo);
        }
    }
}
