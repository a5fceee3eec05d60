package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.walkthrough.idea.Figures.Chain;
import groundbass.walkthrough.words.Wording;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * A figure named when it has been played: by its degrees the first time, then by the bar that had it; a short one that
 * comes a third time everybody knows.
 */
final class FigureRemarks {
    /** More notes than this are a run (common practice, no source). */
    private static final int SHORT = 4;

    private final Wording words;
    private final Melody melody;
    private final FigureWords figures;
    private final Map<List<String>, Known> known = new HashMap<>();

    /** Of the figure that was named last. */
    private List<String> last = List.of();

    /** The bar that had a figure first, its first note, and how often it was said. */
    private record Known(int bar, Tone first, int times) {}

    FigureRemarks(Wording words, Melody melody) {
        this.words = words;
        this.melody = melody;
        this.figures = new FigureWords(words);
    }

    /** Whether a bar is one run from its beginning to its end, so that where it leads goes without saying. */
    boolean isRun(int index, List<Breath> breaths) {
        return Figures.longest(melody.moving(index), breaths)
                .filter(chain -> chain.tones().size() > SHORT)
                .filter(chain -> chain.tones().equals(melody.moving(index)))
                .isPresent();
    }

    /** Of the bar of this index; bars are asked in order. */
    Optional<Remark> of(int index, List<Breath> breaths) {
        return Figures.longest(melody.moving(index), breaths)
                .flatMap(chain -> said(chain, index, breaths).map(text -> remark(chain, text)));
    }

    private static Remark remark(Chain chain, String text) {
        return new Remark(
                chain.last().at().position(),
                text,
                chain.tones().stream().map(tone -> tone.at().position()).toList());
    }

    private Optional<String> said(Chain chain, int index, List<Breath> breaths) {
        if (chain.isChromatic()) {
            return who("figure.half.", chain, index, breaths).map(who -> figures.chromatic(chain, who));
        }
        if (chain.isScale()) {
            return figures.scale(chain).flatMap(scale -> who("figure.half.", chain, index, breaths)
                    .map(who -> words.say("figure.named", who, scale)));
        }
        var degrees = figures.degrees(chain);
        if (degrees.isEmpty()) {
            return Optional.empty();
        }
        var text = figure(chain, degrees.get(), index, breaths);
        text.ifPresent(said -> last = degrees.get());
        return text;
    }

    private Optional<String> figure(Chain chain, List<String> degrees, int index, List<Breath> breaths) {
        var before = known.get(degrees);
        if (before == null) {
            var text = fresh(chain, index, breaths);
            text.ifPresent(each -> known.put(degrees, new Known(index, chain.first(), 1)));
            return text;
        }
        known.put(degrees, new Known(before.bar(), before.first(), before.times() + 1));
        return again(chain, before, degrees.equals(last), index, breaths);
    }

    /** @param straight whether it is the figure that was named last */
    private Optional<String> again(Chain chain, Known before, boolean straight, int index, List<Breath> breaths) {
        if (chain.tones().size() <= SHORT) {
            return before.times() == 1
                    ? who("figure.", chain, index, breaths)
                            .map(who -> straight ? figures.again(chain, who) : figures.named(chain, who))
                    : Optional.empty();
        }
        String bar = String.valueOf(melody.number(before.bar()));
        var start = chain.first().pitch();
        return Optional.of(
                start.equals(before.first().pitch())
                        ? words.say("figure.run.same", bar)
                        : words.say("figure.run", bar, words.name(start.name())));
    }

    private Optional<String> fresh(Chain chain, int index, List<Breath> breaths) {
        boolean whole = melody.moving(index).equals(chain.tones());
        if (chain.isWholeChord() && whole) {
            return Optional.of(figures.chord(chain));
        }
        if (chain.ways().size() == 2 || whole && !isOne(chain, breaths)) {
            return whole ? Optional.of(figures.way(chain)) : Optional.empty();
        }
        return isOne(chain, breaths)
                ? who("figure.", chain, index, breaths).map(who -> figures.named(chain, who))
                : Optional.of(figures.named(chain, words.say("figure.between")))
                        .filter(said -> isOfTwo(chain, breaths));
    }

    /** Whether it begins in the breath before the one that it ends in. */
    private static boolean isOfTwo(Chain chain, List<Breath> breaths) {
        return IntStream.range(1, breaths.size())
                .anyMatch(i ->
                        breaths.get(i).has(chain.last()) && breaths.get(i - 1).has(chain.first()));
    }

    private static boolean isOne(Chain chain, List<Breath> breaths) {
        return breaths.stream().anyMatch(breath -> breath.has(chain.first()) && breath.has(chain.last()));
    }

    /** Who is meant, where it is all of one breath, or what that begins or ends with. */
    private Optional<String> who(String key, Chain chain, int index, List<Breath> breaths) {
        var breath = breaths.stream().filter(each -> each.has(chain.last())).findFirst();
        if (breath.isEmpty() || !breath.get().has(chain.first())) {
            return Optional.empty();
        }
        var struck = melody.bar(index).stream().filter(breath.get()::has).toList();
        var tones = chain.tones();
        int more = struck.size() - tones.size();
        if (more == 0) {
            return Optional.of(words.say(key + "that"));
        }
        if (struck.subList(0, tones.size()).equals(tones)) {
            return Optional.of(words.counted(key + "first", tones.size()));
        }
        return struck.subList(more, struck.size()).equals(tones)
                ? Optional.of(words.counted(key + "last", tones.size()))
                : Optional.empty();
    }
}
