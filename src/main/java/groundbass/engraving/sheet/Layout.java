package groundbass.engraving.sheet;

import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Aids;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.writing.WrittenLine;
import java.util.List;
import java.util.stream.IntStream;

/** From written lines to pages of marks. A pure function of its arguments. */
public final class Layout {
    /** How often staves are made smaller for a system that is higher than a page. */
    private static final int MOST_ATTEMPTS = 6;

    private final List<LineSystems> lines;
    private final SheetOptions options;

    /**
     * One of the lines of a document.
     *
     * @param header what stands over it; the options' own header is not used
     * @param aids what helps its reader; the options' own are not used
     */
    public record Piece(WrittenLine line, Header header, Aids aids) {
        public Piece(WrittenLine line, Header header) {
            this(line, header, Aids.NONE);
        }
    }

    private Layout(List<Piece> pieces, SheetOptions options) {
        this.options = options;
        this.lines = IntStream.range(0, pieces.size())
                .mapToObj(i -> new LineSystems(pieces.get(i), i, options))
                .toList();
    }

    /**
     * Lays out a line. Where a single bar does not fit the paper's width, all staves get smaller until it does.
     *
     * @return at least one page; on a screen exactly one
     */
    public static List<Page> of(WrittenLine line, SheetOptions options) {
        return of(List.of(new Piece(line, options.header(), options.aids())), options);
    }

    /**
     * Lays out lines one after the other. A line begins where the one before it ends if its heading and its first
     * system fit on that page; each page explains its own signs.
     *
     * @param pieces at least one
     * @return at least one page; on a screen exactly one
     */
    public static List<Page> of(List<Piece> pieces, SheetOptions options) {
        return new Layout(pieces, options).pages();
    }

    private List<Page> pages() {
        double least = lines.stream().mapToDouble(LineSystems::leastWidth).max().orElseThrow();
        var paper = options.paper().holding(least);
        for (int attempt = 0; ; attempt++) {
            var fitting = options.with(paper);
            var blocks = lines.stream()
                    .flatMap(line -> line.blocks(fitting).stream())
                    .toList();
            var pages = new Pages(fitting);
            double tooTall = pages.tooTall(blocks);
            if (tooTall <= 1 || attempt == MOST_ATTEMPTS) {
                return pages.of(blocks);
            }
            paper = paper.holding(paper.room() * tooTall * 1.02);
        }
    }
}
