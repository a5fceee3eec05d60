package groundbass.engraving;

import groundbass.score.Header;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Stacks systems on pages under a header and over a footer. */
final class Pages {
    private static final double LEAST_GAP = 2.2;
    private static final double MOST_GAP = 6;
    private static final double AFTER_HEADER = 1.5;
    private static final double OVER_FOOTER = 2.2;

    private final Paper paper;
    private final List<Page.Part> header;
    private final List<Page.Part> legend;
    private final PageFooter footer;

    Pages(SheetOptions options, Header line, Set<Sign> used) {
        this.paper = options.paper();
        this.header = PageHeader.parts(options, line);
        this.legend = options.legend() ? Legend.parts(options, used) : List.of();
        this.footer = new PageFooter(options);
    }

    /** By how much the highest system is too high for a page; 1 or less where all fit. */
    double tooTall(List<Page.Part> systems) {
        if (paper.height().isEmpty()) {
            return 0;
        }
        double highest = systems.stream()
                .mapToDouble(part -> part.group().box().height())
                .max()
                .orElse(0);
        double room = Math.min(room(true), room(false));
        return room <= 0 ? 2 : highest / room;
    }

    /** @param systems each with its first staff line at height zero */
    List<Page> of(List<Page.Part> systems) {
        if (paper.height().isEmpty()) {
            return List.of(endless(systems));
        }
        var filled = PageBreaks.fill(systems, LEAST_GAP, room(true), room(false), legendHeight());
        var pages = new ArrayList<Page>();
        for (int i = 0; i < filled.size(); i++) {
            pages.add(page(filled.get(i), i, filled.size()));
        }
        return pages;
    }

    /** What a page has for its systems. */
    private double room(boolean first) {
        double top = first ? headerHeight() : 0;
        return paper.height().orElseThrow() - 2 * paper.margin() - top - footer.height() - OVER_FOOTER;
    }

    private double headerHeight() {
        return header.isEmpty() ? 0 : height(header) + AFTER_HEADER;
    }

    private double legendHeight() {
        return legend.isEmpty() ? 0 : height(legend) + LEAST_GAP;
    }

    private Page page(List<Page.Part> systems, int index, int count) {
        boolean first = index == 0;
        boolean last = index + 1 == count;
        var parts = new ArrayList<Page.Part>();
        double y = paper.margin();
        if (first) {
            header.forEach(part -> parts.add(moved(part, paper.margin(), paper.margin())));
            y += headerHeight();
        }
        double content = systems.stream()
                .mapToDouble(part -> part.group().box().height())
                .sum();
        double free = room(first) - content - (last ? legendHeight() : 0);
        double gap = Math.min(last ? LEAST_GAP + 1.5 : MOST_GAP, free / Math.max(1, systems.size() - 1));
        y = stack(parts, systems, y, Math.max(LEAST_GAP, gap));
        if (last) {
            stackLegend(parts, y);
        }
        footer.parts(index + 1, count, paper.height().orElseThrow() - paper.margin() - footer.height())
                .forEach(part -> parts.add(moved(part, paper.margin(), 0)));
        return new Page(paper.width(), paper.height().orElseThrow(), paper.staffSpace(), parts);
    }

    private Page endless(List<Page.Part> systems) {
        var parts = new ArrayList<Page.Part>();
        header.forEach(part -> parts.add(moved(part, paper.margin(), paper.margin())));
        double y = stack(parts, systems, paper.margin() + headerHeight(), LEAST_GAP + 1);
        y = stackLegend(parts, y);
        var bottom = footer.parts(1, 1, y);
        bottom.forEach(part -> parts.add(moved(part, paper.margin(), 0)));
        double height = y + footer.height() + paper.margin();
        return new Page(paper.width(), height, paper.staffSpace(), parts);
    }

    private double stack(List<Page.Part> parts, List<Page.Part> systems, double top, double gap) {
        double y = top;
        for (var system : systems) {
            parts.add(moved(system, paper.margin(), y - system.group().box().top()));
            y += system.group().box().height() + gap;
        }
        return y;
    }

    private double stackLegend(List<Page.Part> parts, double y) {
        legend.forEach(part -> parts.add(moved(part, paper.margin(), y)));
        return y + legendHeight();
    }

    private static double height(List<Page.Part> parts) {
        return parts.stream()
                .mapToDouble(part -> part.group().box().bottom())
                .max()
                .orElse(0);
    }

    private static Page.Part moved(Page.Part part, double dx, double dy) {
        var group = part.group();
        return new Page.Part(
                new Group(group.role(), group.passage(), group.box().moved(dx, dy)),
                part.marks().stream().map(mark -> mark.moved(dx, dy)).toList());
    }
}
