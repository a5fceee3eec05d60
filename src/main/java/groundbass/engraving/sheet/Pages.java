package groundbass.engraving.sheet;

import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Sign;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Stacks headings and systems on pages over a legend of the page's own signs and a footer (rule: legend-on-each-page, page-filled). */
final class Pages {
    private static final double LEAST_GAP = 2.2;
    private static final double MOST_GAP = 12;
    private static final double MOST_GAP_LAST = 5;
    private static final double AFTER_HEADING = 1.5;
    private static final double BEFORE_HEADING = 4;
    private static final double OVER_FOOTER = 2.2;

    private final Paper paper;
    private final SheetOptions options;
    private final PageFooter footer;
    private final Legend legend;
    private final Map<Set<Sign>, Double> legendHeights = new HashMap<>();

    Pages(SheetOptions options) {
        this.paper = options.paper();
        this.options = options;
        this.footer = new PageFooter(options);
        this.legend = new Legend(options);
    }

    /** By how much the highest system, with the heading over it, is too high for a page; 1 or less where all fit. */
    double tooTall(List<Block> blocks) {
        if (paper.height().isEmpty()) {
            return 0;
        }
        double highest = 0;
        double heading = 0;
        for (var block : blocks) {
            highest = Math.max(highest, heading + block.height());
            heading = block.heading() ? block.height() + AFTER_HEADING : 0;
        }
        return room() <= 0 ? 2 : highest / room();
    }

    /** @param blocks each system with its first staff line at height zero */
    List<Page> of(List<Block> blocks) {
        if (paper.height().isEmpty()) {
            return List.of(endless(blocks));
        }
        var room = new PageBreaks.Room(LEAST_GAP, AFTER_HEADING, BEFORE_HEADING, room(), this::legendHeight);
        var filled = PageBreaks.fill(blocks, room);
        var pages = new ArrayList<Page>();
        for (int i = 0; i < filled.size(); i++) {
            pages.add(page(filled.get(i), i, filled.size()));
        }
        return pages;
    }

    /** What a page has for its blocks. */
    private double room() {
        return paper.height().orElseThrow() - 2 * paper.margin() - footer.height() - OVER_FOOTER;
    }

    private List<Page.Part> legend(Set<Sign> signs) {
        return options.legend() ? legend.parts(signs) : List.of();
    }

    private double legendHeight(Set<Sign> signs) {
        return legendHeights.computeIfAbsent(signs, each -> {
            var legend = legend(each);
            return legend.isEmpty() ? 0 : height(legend) + LEAST_GAP;
        });
    }

    private static Set<Sign> signs(List<Block> blocks) {
        return blocks.stream().flatMap(block -> block.signs().stream()).collect(Collectors.toSet());
    }

    private Page page(List<Block> blocks, int index, int count) {
        boolean last = index + 1 == count;
        var parts = new ArrayList<Page.Part>();
        double y = stack(parts, blocks, paper.margin(), gap(blocks, last ? MOST_GAP_LAST : MOST_GAP));
        stackLegend(parts, blocks, y);
        footer.parts(index == 0, paper.height().orElseThrow() - paper.margin() - footer.height())
                .forEach(part -> parts.add(part.moved(paper.margin(), 0)));
        return new Page(paper.width(), paper.height().orElseThrow(), paper.staffSpace(), parts);
    }

    /** Between systems: what is left over is shared among the gaps, within reason. */
    private double gap(List<Block> blocks, double most) {
        double fixed = legendHeight(signs(blocks));
        int gaps = 0;
        for (int i = 0; i < blocks.size(); i++) {
            fixed += blocks.get(i).height();
            boolean heading =
                    i > 0 && (blocks.get(i).heading() || blocks.get(i - 1).heading());
            fixed += heading ? (blocks.get(i).heading() ? BEFORE_HEADING : AFTER_HEADING) : 0;
            gaps += i > 0 && !heading ? 1 : 0;
        }
        return Math.max(LEAST_GAP, Math.min(most, (room() - fixed) / Math.max(1, gaps)));
    }

    private Page endless(List<Block> blocks) {
        var parts = new ArrayList<Page.Part>();
        double y = stack(parts, blocks, paper.margin(), LEAST_GAP + 1) + LEAST_GAP + 1;
        y = stackLegend(parts, blocks, y);
        var bottom = footer.parts(true, y);
        bottom.forEach(part -> parts.add(part.moved(paper.margin(), 0)));
        double height = y + footer.height() + paper.margin();
        return new Page(paper.width(), height, paper.staffSpace(), parts);
    }

    /** Where the last block ends. */
    private double stack(List<Page.Part> parts, List<Block> blocks, double top, double gap) {
        var room = new PageBreaks.Room(gap, AFTER_HEADING, BEFORE_HEADING, 0, signs -> 0);
        double y = top;
        for (int i = 0; i < blocks.size(); i++) {
            y += i > 0 ? room.before(blocks, i) : 0;
            parts.addAll(blocks.get(i).at(paper.margin(), y));
            y += blocks.get(i).height();
        }
        return y;
    }

    private double stackLegend(List<Page.Part> parts, List<Block> blocks, double y) {
        var legend = legend(signs(blocks));
        double top = y + (legend.isEmpty() ? 0 : LEAST_GAP);
        legend.forEach(part -> parts.add(part.moved(paper.margin(), top)));
        return top + (legend.isEmpty() ? 0 : height(legend));
    }

    private static double height(List<Page.Part> parts) {
        return parts.stream()
                .mapToDouble(part -> part.group().box().bottom())
                .max()
                .orElse(0);
    }
}
