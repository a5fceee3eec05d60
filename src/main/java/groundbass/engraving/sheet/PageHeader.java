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
import groundbass.engraving.options.SheetOptions;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Title, series, credit, rights and an unusual tuning, over the first system; the origin is the margins' corner. */
final class PageHeader {
    private static final double TITLE = 5;
    private static final double LATER_TITLE = 3.4;
    private static final double SMALL = 2.2;
    private static final double FINE = 1.75;
    private static final Set<Tuning> USUAL = Set.of(Tuning.STANDARD, Tuning.FIVE_STRING, Tuning.SIX_STRING);

    private final List<Page.Part> parts = new ArrayList<>();
    private final double room;
    private double y;

    private PageHeader(double room) {
        this.room = room;
    }

    /** @param first whether it is over the document's first line, whose title is the largest */
    static List<Page.Part> parts(SheetOptions options, SheetOptions.Header texts, Tuning tuning, boolean first) {
        double room = options.paper().room();
        var header = new PageHeader(room);
        double title = Math.min(first ? TITLE : LATER_TITLE, 2.5 + room / 40);
        header.put(Role.PARAGRAPH, texts.series(), Face.REGULAR, SMALL, Align.MIDDLE);
        header.put(Role.TITLE, texts.title(), Face.BOLD, title, first ? Align.MIDDLE : Align.START);
        header.put(Role.PARAGRAPH, texts.credit(), Face.REGULAR, SMALL, Align.END);
        header.put(Role.PARAGRAPH, texts.rights(), Face.REGULAR, FINE, Align.END);
        if (!USUAL.contains(tuning)) {
            String strings = options.words().tuning(strings(tuning));
            header.put(Role.PARAGRAPH, strings, Face.ITALIC, SMALL, Align.START);
        }
        return header.parts;
    }

    private static String strings(Tuning tuning) {
        var lowestFirst = new ArrayList<>(tuning.strings());
        Collections.reverse(lowestFirst);
        return lowestFirst.stream()
                .map(string -> string.pitch().name().toString())
                .collect(Collectors.joining(" "));
    }

    private void put(Role role, String text, Face face, double size, Align align) {
        if (text.isBlank()) {
            return;
        }
        var lines = Paragraph.lines(text, face, size, room);
        var marks = Paragraph.set(lines, face, size, align.share() * room, y, align).stream()
                .map(shape -> Mark.free(Kind.TEXT, shape))
                .toList();
        double height = Paragraph.height(lines, size);
        parts.add(new Page.Part(new Group(role, Optional.empty(), new Box(0, y, room, y + height)), marks));
        y += height + 0.2;
    }
}
