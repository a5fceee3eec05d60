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
import groundbass.engraving.sheet.Flow.Chunk;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Sets words on pages of their own, in two columns, so that the lines are short enough to be read. */
public final class Prose {
    private static final int COLUMNS = 2;

    /** How words of one sort are set. */
    record Style(Role role, Face face, double size, double indent, double before) {
        static final Style HEADING = new Style(Role.HEADING, Face.BOLD, 2.6, 0, 3);
        static final Style TITLE = new Style(Role.TITLE, Face.BOLD, 4, 0, 0);
        static final Style NOTE = new Style(Role.PARAGRAPH, Face.REGULAR, 1.8, 0, 0.4);
        static final Style LEAD = new Style(Role.PARAGRAPH, Face.ITALIC, 1.8, 0, 0.6);
        static final Style NAME = new Style(Role.SUBHEADING, Face.BOLD, 2, 0, 1.3);
        static final Style ITEM = new Style(Role.ITEM, Face.REGULAR, 1.8, 1.2, 0.4);
    }

    private Prose() {}

    /** @param options with paper that has a height */
    public static List<Page> pages(List<TextPart> chapters, SheetOptions options) {
        var flow = new Flow(options, COLUMNS);
        var chunks = new ArrayList<Chunk>();
        chapters.forEach(chapter -> chunks.addAll(chunks(chapter, flow)));
        flow.add(chunks);
        return flow.pages();
    }

    private static List<Chunk> chunks(TextPart chapter, Flow flow) {
        var chunks = new ArrayList<Chunk>();
        chunks.addAll(chunks(chapter.heading(), Style.HEADING, flow));
        chunks.addAll(chunks(chapter.lead(), Style.LEAD, flow));
        for (var entry : chapter.entries()) {
            chunks.addAll(chunks(entry.name(), Style.NAME, flow));
            entry.items().forEach(item -> chunks.addAll(chunks(item, Style.ITEM, flow)));
        }
        return chunks;
    }

    /** One chunk, or several where the text is longer than a column; none where it is blank. */
    static List<Chunk> chunks(String text, Style style, Flow flow) {
        if (text.isBlank()) {
            return List.of();
        }
        var lines = Paragraph.lines(text, style.face(), style.size(), flow.width() - style.indent());
        int most = Math.max(1, (int) (flow.height() / Paragraph.height(lines.subList(0, 1), style.size())));
        var chunks = new ArrayList<Chunk>();
        for (int from = 0; from < lines.size(); from += most) {
            chunks.add(chunk(lines.subList(from, Math.min(lines.size(), from + most)), style, flow.width()));
        }
        return chunks;
    }

    private static Chunk chunk(List<String> lines, Style style, double width) {
        var marks = Paragraph.set(lines, style.face(), style.size(), style.indent(), 0, Align.START).stream()
                .map(shape -> Mark.free(Kind.TEXT, shape))
                .toList();
        double height = Paragraph.height(lines, style.size());
        var group = new Group(style.role(), Optional.empty(), new Box(0, 0, width, height));
        boolean leads = style.role() == Role.HEADING || style.role() == Role.SUBHEADING || style == Style.NOTE;
        return new Chunk(List.of(new Page.Part(group, marks)), height, style.before(), leads);
    }
}
