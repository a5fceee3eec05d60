package groundbass.engraving;

import groundbass.engraving.Group.Role;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Release, cautions, page number and the way to the episode, under every page; x counts from the left margin. */
final class PageFooter {
    private static final double SIZE = 1.6;
    private static final double CODE = 9;
    private static final double GAP = 2;

    private final SheetOptions options;
    private final double room;
    private final boolean withCode;

    PageFooter(SheetOptions options) {
        this.options = options;
        this.room = options.paper().room();
        this.withCode = options.paper().height().isPresent()
                && options.footer().address().isPresent();
    }

    double height() {
        double text = texts(0, 1, 1).stream()
                .map(part -> part.group().box())
                .mapToDouble(Box::bottom)
                .max()
                .orElse(0);
        return Math.max(text, withCode ? CODE : 0);
    }

    List<Page.Part> parts(int page, int pages, double top) {
        var parts = new ArrayList<>(texts(top, page, pages));
        if (withCode) {
            options.footer().address().ifPresent(address -> parts.add(code(address, top)));
        }
        return parts;
    }

    private List<Page.Part> texts(double top, int page, int pages) {
        var parts = new ArrayList<Page.Part>();
        double width = withCode ? room - CODE - GAP : room;
        double y = top;
        var footer = options.footer();
        y = put(parts, Role.PARAGRAPH, footer.cautions(), width, y);
        if (footer.address().isPresent()) {
            y = link(parts, footer.address().get(), y);
        }
        y = put(parts, Role.PARAGRAPH, footer.release(), width, y);
        if (options.paper().height().isPresent()) {
            put(parts, Role.FURNITURE, options.words().pageOf(page, pages), width, y);
        }
        return parts;
    }

    private static double put(List<Page.Part> parts, Role role, String text, double width, double y) {
        if (text.isBlank()) {
            return y;
        }
        var lines = Paragraph.lines(text, Face.REGULAR, SIZE, width);
        var marks = Paragraph.set(lines, Face.REGULAR, SIZE, 0, y, Align.START).stream()
                .map(shape -> Mark.free(Kind.TEXT, shape))
                .toList();
        double bottom = y + Paragraph.height(lines, SIZE);
        parts.add(new Page.Part(new Group(role, Optional.empty(), new Box(0, y, width, bottom)), marks));
        return bottom;
    }

    private static double link(List<Page.Part> parts, String address, double y) {
        var at = new Point(0, y + SIZE * 0.75);
        var run = new Shape.Run(address, Face.REGULAR, SIZE, at, Align.START, Optional.of(address));
        double bottom = y + SIZE * 1.25;
        parts.add(new Page.Part(
                new Group(Role.LINK, Optional.empty(), new Box(0, y, run.width(), bottom)),
                List.of(Mark.free(Kind.TEXT, run))));
        return bottom;
    }

    private Page.Part code(String address, double top) {
        var box = new Box(room - CODE, top, room, top + CODE);
        var marks = QrCode.shapes(address, box).stream()
                .map(shape -> Mark.free(Kind.QR, shape))
                .toList();
        return new Page.Part(new Group(Role.FURNITURE, Optional.empty(), box), marks);
    }
}
