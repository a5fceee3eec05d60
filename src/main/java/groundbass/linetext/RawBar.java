package groundbass.linetext;

import groundbass.score.Repeats;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** One bar as typed, before anything in it is given a time: filled line by line, then read once. */
final class RawBar {
    final Head head;
    final Before before;
    final List<CountLine> counts = new ArrayList<>();

    /** Whether part of it could not be read, so that what is left unsaid is no news. */
    boolean unread;

    RawBar(Head head, Before before) {
        this.head = head;
        this.before = before;
    }

    /** The line that begins a bar. Chords are absent where none were said: a copied bar then has those it copies. */
    record Head(
            Span span,
            Optional<Numbered> number,
            Optional<Copied> copied,
            Optional<Until> until,
            Optional<List<TypedChord>> chords) {
        static Head plain(Span span) {
            return new Head(span, Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
        }
    }

    record Numbered(Span span, int number) {}

    record Copied(Span span, int bar, Optional<CountLine.Target> counts) {}

    record Until(Span span, Moment moment) {}

    record TypedChord(Span span, ChordSymbol chord, Optional<Moment> at) {}

    /** The signs at a bar, each on a line of its own. */
    enum Sign {
        START,
        ENDING,
        ENDING_END,
        END
    }

    /** What stands on lines of their own before a bar, and the signs after it. */
    static final class Before {
        final List<Setting> settings = new ArrayList<>();
        final Map<Sign, Span> signs = new EnumMap<>(Sign.class);
        Repeats repeats = Repeats.NONE;

        boolean isEmpty() {
            return settings.isEmpty() && signs.isEmpty();
        }

        /** Where the first thing said stands. */
        Optional<Span> first() {
            return Stream.concat(settings.stream().map(Setting::span), signs.values().stream())
                    .min(Span::compareTo);
        }
    }
}
