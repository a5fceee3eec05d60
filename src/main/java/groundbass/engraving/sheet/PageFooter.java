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
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.SheetOptions;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Rights, cautions, the way to the episode and the release, under every page of paper over its number; x counts from the left margin. */
final class PageFooter {
    private static final double SIZE = 1.6;
    private static final double CODE = 9;
    private static final double GAP = 2;

    /** What a page number needs, in its own size. */
    private static final double NUMBER_LINE = 1.25;

    private final SheetOptions options;
    private final double room;
    private final boolean withCode;
    private Optional<Page.Part> code = Optional.empty();

    PageFooter(SheetOptions options) {
        this.options = options;
        this.room = options.paper().room();
        this.withCode =
                options.paper().height().isPresent() && options.footer().way().isPresent();
    }

    double height() {
        double text = texts(true, 0).stream()
                .map(part -> part.group().box())
                .mapToDouble(Box::bottom)
                .max()
                .orElse(0);
        double number = options.paper().height().isPresent() ? PageNumbers.SIZE * NUMBER_LINE : 0;
        return Math.max(text + number, withCode ? CODE : 0);
    }

    /** @param first whether the page is a sheet's first, where all of it is read out */
    List<Page.Part> parts(boolean first, double top) {
        var parts = new ArrayList<>(texts(first, top));
        if (withCode) {
            parts.add(code().moved(0, top));
        }
        return parts;
    }

    private List<Page.Part> texts(boolean first, double top) {
        var parts = new ArrayList<Page.Part>();
        var role = first ? Role.PARAGRAPH : Role.FURNITURE;
        double width = withCode ? room - CODE - GAP : room;
        double y = top;
        var footer = options.footer();
        y = put(parts, role, footer.rights(), width, y);
        y = put(parts, role, footer.cautions(), width, y);
        if (footer.way().isPresent()) {
            y = link(parts, footer.way().get().address(), y);
        }
        put(parts, role, footer.release(), width, y);
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

    /** The same on every page. */
    private Page.Part code() {
        if (code.isEmpty()) {
            var box = new Box(room - CODE, 0, room, CODE);
            var marks = options.footer().way().orElseThrow().shapes(box).stream()
                    .map(shape -> Mark.free(Kind.QR, shape))
                    .toList();
            code = Optional.of(new Page.Part(new Group(Role.FURNITURE, Optional.empty(), box), marks));
        }
        return code.get();
    }
}
