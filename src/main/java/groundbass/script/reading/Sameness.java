package groundbass.script.reading;

import groundbass.score.Line;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Claim;
import groundbass.script.claims.Said;
import groundbass.script.claims.Spoken;
import groundbass.script.words.Sense;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Finds what is said of bars that are the same as other bars, and how far. */
final class Sameness {
    private final List<Said> chunks;
    private final Context context;
    private final int beatsOfABar;

    private Sameness(List<Said> chunks, Context context, Line line) {
        this.chunks = chunks;
        this.context = context;
        this.beatsOfABar = line.header().meter().counts();
    }

    /** The claims; empty where the sentence compares no bars. */
    static List<Spoken> in(List<Said> chunks, Context context, Line line) {
        return new Sameness(chunks, context, line).all();
    }

    private List<Spoken> all() {
        var found = new ArrayList<Spoken>();
        int i = 0;
        while (i < chunks.size()) {
            var second = context.bars(chunks.get(i).chunk()).isPresent() ? second(i) : Optional.<Integer>empty();
            if (second.isPresent()) {
                found.add(claim(i, second.get()));
                i = second.get() + 1;
            } else {
                within(i).ifPresent(found::add);
                i++;
            }
        }
        return found;
    }

    /** "Bars one and three are the same." */
    private Optional<Spoken> within(int i) {
        if (!(chunks.get(i).chunk() instanceof Chunk.Bars bars)
                || bars.numbers().size() < 2) {
            return Optional.empty();
        }
        int link = i + 1;
        while (link < chunks.size() && (is(link, Sense.BE) || is(link, Sense.PLAIN) || isBeats(link))) {
            link++;
        }
        if (link == i + 1 || !(is(link, Sense.SAME) || is(link, Sense.SAME_RHYTHM)) || isCore(link + 1)) {
            return Optional.empty();
        }
        var rest = bars.numbers().subList(1, bars.numbers().size());
        var claim = new Claim.SameBars(rest, List.of(bars.numbers().get(0)), scope(i, i, link));
        return Optional.of(
                new Spoken(claim, chunks.get(i).from(), chunks.get(link).to()));
    }

    private boolean is(int i, Sense sense) {
        return i >= 0 && i < chunks.size() && chunks.get(i).is(sense);
    }

    private boolean isBeats(int i) {
        return i >= 0
                && i < chunks.size()
                && (chunks.get(i).is(Chunk.Beats.class) || chunks.get(i).is(Chunk.LastBeats.class));
    }

    private boolean isCore(int i) {
        return i < chunks.size()
                && (chunks.get(i).is(Chunk.Notes.class)
                        || chunks.get(i).is(Chunk.Places.class)
                        || chunks.get(i).is(Chunk.Lengths.class)
                        || chunks.get(i).is(Chunk.Played.class));
    }

    /** The bar that the one at {@code i} is compared with. */
    private Optional<Integer> second(int i) {
        boolean same = false;
        boolean copula = false;
        for (int at = i + 1; at < chunks.size(); at++) {
            var said = chunks.get(at);
            if (context.bars(said.chunk()).isPresent()) {
                boolean after = isSameAfter(at);
                return same || after || (copula && !isPlaced(at)) ? Optional.of(at) : Optional.empty();
            }
            same |= said.is(Sense.SAME) || said.is(Sense.SAME_RHYTHM);
            boolean adjacent = said.is(Sense.BE) || said.is(Sense.AGAIN);
            copula |= adjacent;
            boolean small = adjacent
                    || isBeats(at)
                    || said.is(Sense.SAME)
                    || said.is(Sense.SAME_RHYTHM)
                    || said.is(Sense.NEARLY)
                    || said.is(Sense.PLAIN)
                    || said.is(Sense.TO)
                    || said.is(Sense.NOTE)
                    || said.isPronoun()
                    || said.is(Sense.EXCEPT)
                    || said.is(Sense.UNTIL)
                    || said.is(Sense.TOGETHER)
                    || said.is(Chunk.Order.class)
                    || (said.is(Sense.AND) && isBeats(at - 1))
                    || (same && said.is(Sense.COMMA));
            if (!small) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    /** "... bar one, exactly the same." */
    private boolean isSameAfter(int second) {
        for (int at = second + 1; at < Math.min(chunks.size(), second + 5); at++) {
            if (is(at, Sense.SAME)) {
                return !isCore(at + 1);
            }
            boolean small = is(at, Sense.COMMA) || is(at, Sense.BE) || is(at, Sense.PLAIN) || isBeats(at);
            if (!small) {
                return false;
            }
        }
        return false;
    }

    /** Whether "in" or "on" stands before the bar, so that it is a place and no second subject. */
    private boolean isPlaced(int second) {
        return is(second + 1, Sense.BE);
    }

    private Spoken claim(int first, int second) {
        var bars = context.bars(chunks.get(first).chunk()).orElseThrow();
        var as = context.bars(chunks.get(second).chunk()).orElseThrow();
        var claim = new Claim.SameBars(bars, as, scope(first, second, second));
        return new Spoken(claim, chunks.get(first).from(), chunks.get(second).to());
    }

    private Claim.Scope scope(int first, int second, int link) {
        var only = new TreeSet<Integer>();
        var but = new ArrayList<Integer>();
        IntStream.range(0, chunks.size()).forEach(i -> (isExcepted(i) ? but : only).addAll(beats(i)));
        boolean loosely = isLoose(link, only.isEmpty() && but.isEmpty(), but.isEmpty());
        if (only.isEmpty() && begins(first, second)) {
            only.add(1);
        }
        var besides = besides(first, second);
        return new Claim.Scope(
                besides.isEmpty() ? List.copyOf(only) : beatsOf(first),
                besides,
                but,
                says(Sense.SAME_RHYTHM),
                octaves() == 0 ? new Claim.Shift.Frets(moved()) : new Claim.Shift.Semitones(12 * octaves()),
                loosely);
    }

    /** The beats that a chunk names; up to a beat means those before it. */
    private List<Integer> beats(int i) {
        if (chunks.get(i).chunk() instanceof Chunk.Beats beats) {
            return is(i - 1, Sense.UNTIL)
                    ? IntStream.range(1, beats.numbers().get(0)).boxed().toList()
                    : beats.numbers();
        }
        return chunks.get(i).chunk() instanceof Chunk.LastBeats last
                ? IntStream.rangeClosed(beatsOfABar - last.many() + 1, beatsOfABar)
                        .boxed()
                        .toList()
                : List.of();
    }

    /** Whether the speaker leaves room that cannot be measured: "almost", "except the last note", "until the end". */
    private boolean isLoose(int link, boolean unlimited, boolean nothingExcepted) {
        boolean except = (says(Sense.EXCEPT) || says(Sense.CHANGES)) && nothingExcepted;
        boolean until = IntStream.range(0, chunks.size()).anyMatch(i -> is(i, Sense.UNTIL) && !isBeats(i + 1));
        boolean but = unlimited && chunks.subList(link, chunks.size()).stream().anyMatch(said -> said.is(Sense.BUT));
        return says(Sense.NEARLY) || except || until || but;
    }

    private boolean says(Sense sense) {
        return chunks.stream().anyMatch(said -> said.is(sense));
    }

    private boolean isExcepted(int i) {
        return is(i - 1, Sense.EXCEPT)
                || is(i + 1, Sense.CHANGES)
                || (is(i - 2, Sense.EXCEPT) && is(i - 1, Sense.PLAIN));
    }

    /** "Begins like": only the beginning is compared. */
    private boolean begins(int first, int second) {
        return chunks.subList(first, second).stream().anyMatch(said -> said.is(Chunk.Order.class));
    }

    /** The beats of the second bar where they are not those of the first. */
    private List<Integer> besides(int first, int second) {
        var mine = beatsOf(first);
        var other = beatsOf(second);
        boolean differ = !mine.isEmpty() && mine.size() == other.size() && !mine.equals(other);
        return differ ? other : List.of();
    }

    private List<Integer> beatsOf(int bar) {
        for (int at : List.of(bar - 1, bar + 1)) {
            if (isBeats(at) && chunks.get(at).chunk() instanceof Chunk.Beats beats) {
                return beats.numbers();
            }
        }
        return List.of();
    }

    private int moved() {
        return chunks.stream()
                .map(Said::chunk)
                .filter(Chunk.Moved.class::isInstance)
                .mapToInt(chunk -> ((Chunk.Moved) chunk).frets())
                .findFirst()
                .orElse(0);
    }

    private int octaves() {
        return chunks.stream()
                .map(Said::chunk)
                .filter(Chunk.Octaves.class::isInstance)
                .mapToInt(chunk -> ((Chunk.Octaves) chunk).octaves() * ((Chunk.Octaves) chunk).direction())
                .findFirst()
                .orElse(0);
    }
}
