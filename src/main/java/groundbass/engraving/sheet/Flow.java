package groundbass.engraving.sheet;

import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import java.util.ArrayList;
import java.util.List;

/** Fills pages of paper, column by column, with chunks that are not torn apart. */
final class Flow {
    private static final double GUTTER = 4;
    private static final double OVER_FOOTER = 2.2;

    private final Paper paper;
    private final PageFooter footer;
    private final int columns;
    private final double bottom;
    private final List<List<Page.Part>> pages = new ArrayList<>();
    private double y;
    private int column;

    /**
     * What stays together; its origin is the upper left corner.
     *
     * @param before what is left free above it, but not at the head of a column
     * @param leads whether it must not stand at the foot of a column, parted from what follows
     */
    record Chunk(List<Page.Part> parts, double height, double before, boolean leads) {
        /** The same of another piece of the document. */
        Chunk of(int piece) {
            return new Chunk(parts.stream().map(part -> part.of(piece)).toList(), height, before, leads);
        }
    }

    /** @param options with paper that has a height */
    Flow(SheetOptions options, int columns) {
        this.paper = options.paper();
        this.footer = new PageFooter(options);
        this.columns = columns;
        this.bottom = paper.height().orElseThrow() - paper.margin() - footer.height() - OVER_FOOTER;
        newPage();
    }

    /** Of a column. */
    double width() {
        return (paper.room() - (columns - 1) * GUTTER) / columns;
    }

    /** Of a whole column. */
    double height() {
        return bottom - paper.margin();
    }

    void add(List<Chunk> chunks) {
        for (int i = 0; i < chunks.size(); i++) {
            var chunk = chunks.get(i);
            double needed = before(chunk) + chunk.height();
            for (int k = i; chunks.get(k).leads() && k + 1 < chunks.size(); k++) {
                needed += chunks.get(k + 1).before() + chunks.get(k + 1).height();
            }
            if (y + needed > bottom && y > paper.margin()) {
                newColumn();
            }
            place(chunk, before(chunk));
        }
    }

    List<Page> pages() {
        var all = new ArrayList<Page>();
        for (int i = 0; i < pages.size(); i++) {
            var parts = new ArrayList<>(pages.get(i));
            double height = paper.height().orElseThrow();
            footer.parts(false, height - paper.margin() - footer.height())
                    .forEach(part -> parts.add(part.moved(paper.margin(), 0)));
            all.add(new Page(paper.width(), height, paper.staffSpace(), parts));
        }
        return all;
    }

    private double before(Chunk chunk) {
        return y > paper.margin() ? chunk.before() : 0;
    }

    private void place(Chunk chunk, double before) {
        double left = paper.margin() + column * (width() + GUTTER);
        y += before;
        for (var part : chunk.parts()) {
            pages.get(pages.size() - 1).add(part.moved(left, y));
        }
        y += chunk.height();
    }

    private void newColumn() {
        if (++column == columns) {
            newPage();
        }
        y = paper.margin();
    }

    private void newPage() {
        pages.add(new ArrayList<>());
        column = 0;
        y = paper.margin();
    }
}
