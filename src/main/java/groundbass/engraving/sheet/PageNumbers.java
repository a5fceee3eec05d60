package groundbass.engraving.sheet;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Paragraph;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Numbers the pages of a whole document, when all of them are known. */
final class PageNumbers {
    static final double SIZE = 1.6;
    private static final String DOT = " · ";

    private PageNumbers() {}

    /** @param title what a loose page belongs to; the first page bears it already */
    static List<Page> on(List<Page> pages, String title, SheetWords words) {
        var numbered = new ArrayList<Page>();
        for (int i = 0; i < pages.size(); i++) {
            String place = words.pageOf(i + 1, pages.size());
            numbered.add(with(pages.get(i), i == 0 || title.isBlank() ? place : title + DOT + place));
        }
        return numbered;
    }

    /** On the last line over the lower margin, which the footer leaves free. */
    private static Page with(Page page, String text) {
        double margin = Paper.MARGIN_MILLIMETRES / page.staffSpace();
        double bottom = page.height() - margin;
        var lines = Paragraph.lines(text, Face.REGULAR, SIZE, (page.width() - 2 * margin) * 0.8);
        double top = bottom - Paragraph.height(lines.subList(0, 1), SIZE);
        var marks = Paragraph.set(lines.subList(0, 1), Face.REGULAR, SIZE, margin, top, Align.START).stream()
                .map(shape -> Mark.free(Kind.TEXT, shape))
                .toList();
        var group = new Group(Role.FURNITURE, Optional.empty(), new Box(margin, top, page.width() - margin, bottom));
        var parts = new ArrayList<>(page.parts());
        parts.add(new Page.Part(group, marks));
        return new Page(page.width(), page.height(), page.staffSpace(), parts);
    }
}
