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
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.options.SheetOptions;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Series, title and credit and an unusual tuning, over the first system and flush with the staff (rule: title-block); the
 * origin is the margins' corner.
 */
final class PageHeader {
    private static final double TITLE = 5;
    private static final double LATER_TITLE = 3.4;
    private static final double SMALL = 2.2;

    /** Between a title and the credit on its baseline. */
    private static final double BETWEEN = 3;

    /** A title is made so much smaller, and no more, to keep it on one line. */
    private static final double SMALLEST_SHARE = 0.7;

    /** Where a baseline lies in its line, of the size. */
    private static final double BASELINE = 0.75;

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
        header.put(Role.PARAGRAPH, texts.series(), Face.REGULAR, SMALL);
        double titleTop = header.y;
        double size = header.onOneLine(texts.title(), title);
        header.title(texts.title(), size);
        header.credit(texts, titleTop, size);
        if (!USUAL.contains(tuning)) {
            String strings = options.words().tuning(strings(tuning));
            header.put(Role.PARAGRAPH, strings, Face.ITALIC, SMALL);
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

    /** The size in which a title takes one line, if it is not much smaller. */
    private double onOneLine(String title, double size) {
        double fitting = room / Math.max(1e-9, TextFont.of(Face.BOLD).width(title));
        return fitting >= SMALLEST_SHARE * size ? Math.min(size, fitting) : size;
    }

    /** At the right margin on the baseline of a title of one line that leaves room, else under it. */
    private void credit(SheetOptions.Header texts, double titleTop, double size) {
        double needed = TextFont.of(Face.BOLD).width(texts.title()) * size
                + BETWEEN
                + TextFont.of(Face.REGULAR).width(texts.credit()) * SMALL;
        if (texts.title().isBlank() || texts.credit().isBlank() || needed > room) {
            put(Role.PARAGRAPH, texts.credit(), Face.REGULAR, SMALL);
            return;
        }
        double top = titleTop + BASELINE * (size - SMALL);
        add(Role.PARAGRAPH, List.of(texts.credit()), Face.REGULAR, SMALL, Align.END, top);
    }

    private void title(String title, double size) {
        if (!title.isBlank()) {
            var lines = Paragraph.balanced(title, Face.BOLD, size, room);
            y = add(Role.TITLE, lines, Face.BOLD, size, Align.START, y) + 0.2;
        }
    }

    private void put(Role role, String text, Face face, double size) {
        if (!text.isBlank()) {
            y = add(role, Paragraph.lines(text, face, size, room), face, size, Align.START, y) + 0.2;
        }
    }

    /** Where the lines end. */
    private double add(Role role, List<String> lines, Face face, double size, Align align, double top) {
        var marks = Paragraph.set(lines, face, size, align.share() * room, top, align).stream()
                .map(shape -> Mark.free(Kind.TEXT, shape))
                .toList();
        double bottom = top + Paragraph.height(lines, size);
        parts.add(new Page.Part(new Group(role, Optional.empty(), new Box(0, top, room, bottom)), marks));
        return bottom;
    }
}
