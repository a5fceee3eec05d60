package groundbass.linetext.edit;

import groundbass.linetext.assemble.CountStretches;
import groundbass.linetext.source.Moment;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Line;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * How a text is laid out: what its header says, and for every bar what is typed at which count. Beside the line, for
 * whoever shows the text part by part.
 */
public record Outline(List<Setting> header, List<BarPart> bars) {
    private static final Pattern SIGN = Pattern.compile("^(=|as)\\s*");

    public Outline {
        header = List.copyOf(header);
        bars = List.copyOf(bars);
    }

    /** A line of the header as typed, readable or not. */
    public record Setting(String name, String value) {}

    /**
     * What is typed for one bar.
     *
     * @param line where the bar begins in the text, from 1
     * @param chords as typed behind {@code over}
     * @param taken what it takes over, as typed: {@code bar 1, one string higher}; empty where it is on its own
     * @param copied the number of the bar whose notes it takes over
     * @param moved what it takes over elsewhere on the neck, count by count; typed nowhere, so its places are 0
     */
    public record BarPart(
            int number,
            int line,
            boolean headed,
            String chords,
            String taken,
            Optional<Integer> copied,
            List<CountPart> counts,
            List<CountPart> moved) {
        public BarPart {
            counts = List.copyOf(counts);
            moved = List.copyOf(moved);
        }
    }

    /**
     * One count line.
     *
     * @param label its counts as typed: {@code 1&}, {@code 2-3}, {@code 1 2 3 4}
     * @param at the first of its counts alone
     * @param from, to the time that it fills, from the start of the bar; of its first count where it has several
     * @param events what stands behind the counts
     * @param start where that begins, in UTF-16 units from the start of the text
     */
    public record CountPart(String label, String at, Fraction from, Fraction to, String events, int start, int line) {}

    public static Outline of(String text) {
        return of(new IndexedText(text));
    }

    /** The same, where the text was read already: {@code line} is what came of it. */
    public static Outline of(String text, Line line) {
        return of(new IndexedText(text, line));
    }

    private static Outline of(IndexedText manuscript) {
        var header = HeaderEdits.said(manuscript).stream()
                .map(said -> new Setting(said.word().toString(), manuscript.text(said.value())))
                .toList();
        var bars = IntStream.range(0, manuscript.bars().size())
                .mapToObj(index -> bar(manuscript, index))
                .toList();
        return new Outline(header, bars);
    }

    private static BarPart bar(IndexedText text, int index) {
        var bar = text.bars().get(index);
        boolean headed = text.hasHead(index);
        String chords = headed ? BarEdits.chords(text.text(bar.head.span())).orElse("") : "";
        var counts = text.stretches(index).stream()
                .collect(Collectors.groupingBy(stretch -> stretch.line().span().line()))
                .values()
                .stream()
                .map(stretches -> count(text, stretches.get(0)))
                .sorted(Comparator.comparing(CountPart::from))
                .toList();
        var copy = text.line().bars().get(index).copy();
        var moved =
                copy.filter(found -> !found.shift().isNone()).isPresent() ? moved(text, index) : List.<CountPart>of();
        return new BarPart(
                text.inForce(index).number(),
                bar.head.span().line(),
                headed,
                chords,
                bar.head
                        .copied()
                        .map(copied -> SIGN.matcher(text.text(copied.span())).replaceFirst(""))
                        .orElse(""),
                copy.map(Copy::bar),
                counts,
                moved);
    }

    private static List<CountPart> moved(IndexedText text, int index) {
        var meter = text.inForce(index).meter();
        return WrittenOut.counts(text, index).stream()
                .map(said -> new CountPart(
                        said.counts(),
                        Moment.at(said.span().from(), meter).toString(),
                        said.span().from(),
                        said.span().to(),
                        said.events(),
                        0,
                        0))
                .toList();
    }

    private static CountPart count(IndexedText text, CountStretches.Stretch stretch) {
        var line = stretch.line();
        var events = IndexedText.events(line);
        String label = line.targets().stream().map(Target::span).map(text::text).collect(Collectors.joining(" "));
        return new CountPart(
                label,
                stretch.target().from().toString(),
                stretch.from(),
                stretch.to(),
                text.text(events),
                text.start(events),
                line.span().line());
    }
}
