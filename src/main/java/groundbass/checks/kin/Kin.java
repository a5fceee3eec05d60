package groundbass.checks.kin;

import groundbass.checks.kin.Likeness.Deviation;
import groundbass.score.NoteAt;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The figures that a figure is like, but for one thing.
 *
 * @param like those that would have it otherwise
 * @param same those that go as it does, so that it may well be meant
 */
public record Kin(Figure figure, Deviation deviation, List<Figure> like, List<Figure> same) {
    /** How many bars before and after are looked at: a long line has its kin nearby. */
    private static final int NEARBY = 24;

    public Kin {
        like = List.copyOf(like);
        same = List.copyOf(same);
    }

    /** The note that stands out. */
    public NoteAt at() {
        return figure.at(deviation.note());
    }

    /** How many notes a figure and those like it share. */
    public int shared() {
        return figure.size() - deviation.apart();
    }

    /** Whether the one thing lies between others that are alike, and not at the end of them. */
    public boolean isEnclosed() {
        return deviation.note() < figure.size() - 1;
    }

    /** What stands out among figures of the same beats. */
    public static List<Kin> among(List<List<Figure>> byBeats) {
        return byBeats.stream()
                .map(Comparisons::new)
                .flatMap(each ->
                        IntStream.range(0, each.figures().size()).boxed().flatMap(i -> of(each, i)))
                .toList();
    }

    private static Stream<Kin> of(Comparisons comparisons, int index) {
        var figures = comparisons.figures();
        var judged = figures.get(index);
        Map<Deviation, List<Figure>> others = new LinkedHashMap<>();
        var same = new ArrayList<Figure>();
        for (int i = first(figures, index); i < figures.size() && isNear(figures.get(i), judged); i++) {
            var pattern = figures.get(i);
            var likeness = i == index ? Optional.<Likeness>empty() : comparisons.of(i, index);
            likeness.ifPresent(each -> (each instanceof Deviation deviation
                            ? others.computeIfAbsent(deviation, key -> new ArrayList<>())
                            : same)
                    .add(pattern));
        }
        return others.entrySet().stream().map(each -> new Kin(judged, each.getKey(), each.getValue(), same));
    }

    private static int first(List<Figure> figures, int index) {
        int first = index;
        while (first > 0 && isNear(figures.get(first - 1), figures.get(index))) {
            first--;
        }
        return first;
    }

    private static boolean isNear(Figure pattern, Figure judged) {
        return Math.abs(pattern.bar() - judged.bar()) <= NEARBY;
    }
}
