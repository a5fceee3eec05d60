package groundbass.web.statistics;

import groundbass.audience.visit.LoopedBar;
import groundbass.audience.visit.PlayedPart;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** How far the lines of one lesson were played, and which bars of them were repeated; lines that nobody played are left out. */
public record PlayedLines(List<Row> lines) {
    public PlayedLines {
        lines = List.copyOf(lines);
    }

    /**
     * One line.
     *
     * @param name its id on the page
     * @param parts from those who played one bar to those who played all
     * @param release the number of the release that readers get, to which the sheet belongs
     * @param bars that were repeated on it, in their order
     * @param earlier bars that were repeated on the sheets of earlier releases, the latest of them first
     * @param narrow, wide its sheet for two widths of screen; empty where it is not there
     */
    public record Row(
            String name,
            String title,
            List<Part> parts,
            int release,
            List<LoopedBar> bars,
            List<LoopedBar> earlier,
            Optional<String> narrow,
            Optional<String> wide) {
        public Row {
            parts = List.copyOf(parts);
            bars = List.copyOf(bars);
            earlier = List.copyOf(earlier);
        }

        /** Whether any bar was repeated, of whatever release. */
        public boolean isRepeated() {
            return !bars.isEmpty() || !earlier.isEmpty();
        }

        /** What the page's script shades. */
        public String shades() {
            return bars.stream().map(bar -> bar.bar() + ":" + bar.visitors()).collect(Collectors.joining(" "));
        }

        /** The bar that was repeated most, the first of several. */
        public Optional<LoopedBar> most() {
            return bars.stream().reduce((one, other) -> other.visitors() > one.visitors() ? other : one);
        }
    }

    /**
     * How many played so much of it at least.
     *
     * @param share how many of a hundred of all who played
     */
    public record Part(int quarters, long visitors, long share) {}

    static PlayedLines of(ReleasedLines.Found release, List<PlayedPart> parts, List<LoopedBar> bars) {
        return new PlayedLines(release.lines().stream()
                .filter(line -> parts.stream().anyMatch(part -> part.line().equals(line.name())))
                .map(line -> row(release, line, parts, bars))
                .toList());
    }

    private static Row row(
            ReleasedLines.Found release, ReleasedLines.Line line, List<PlayedPart> parts, List<LoopedBar> bars) {
        var own = parts.stream().filter(part -> part.line().equals(line.name())).toList();
        var ofLine = bars.stream().filter(bar -> bar.line().equals(line.name()));
        var byRelease = ofLine.collect(Collectors.partitioningBy(bar -> bar.release() == release.number()));
        var looped = byRelease.get(true);
        var names = looped.isEmpty() ? List.<String>of() : line.pictures();
        long all = own.get(0).visitors();
        return new Row(
                line.name(),
                line.title(),
                own.stream()
                        .map(part ->
                                new Part(part.quarters(), part.visitors(), Math.round(100.0 * part.visitors() / all)))
                        .toList(),
                release.number(),
                looped,
                byRelease.get(false),
                names.stream().findFirst().flatMap(release::drawing),
                names.stream().reduce((one, other) -> other).flatMap(release::drawing));
    }

    /** Whether any bar of any line was repeated. */
    public boolean isRepeated() {
        return lines.stream().anyMatch(Row::isRepeated);
    }

    public boolean isEmpty() {
        return lines.isEmpty();
    }
}
