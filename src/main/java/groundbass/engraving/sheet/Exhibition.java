package groundbass.engraving.sheet;

import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.sheet.Flow.Chunk;
import groundbass.engraving.sheet.Prose.Style;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;

/** Sets small pieces of music under one another, each with a heading and some words. */
public final class Exhibition {
    private static final double BETWEEN = 1.5;

    /**
     * One of the pieces.
     *
     * @param options which staves and how; its paper is not used
     */
    public record Piece(String title, List<String> words, WrittenLine line, SheetOptions options) {
        public Piece {
            words = List.copyOf(words);
        }
    }

    private Exhibition() {}

    /** @param options with paper that has a height */
    public static List<Page> pages(String title, List<Piece> pieces, SheetOptions options) {
        var flow = new Flow(options, 1);
        var chunks = new ArrayList<>(Prose.chunks(title, Style.TITLE, flow));
        for (int i = 0; i < pieces.size(); i++) {
            int number = i;
            chunks(pieces.get(i), flow).forEach(chunk -> chunks.add(chunk.of(number)));
        }
        flow.add(chunks);
        return flow.pages();
    }

    private static List<Chunk> chunks(Piece piece, Flow flow) {
        var chunks = new ArrayList<>(Prose.chunks(piece.title(), Style.HEADING, flow));
        piece.words().forEach(text -> chunks.addAll(Prose.chunks(text, Style.NOTE, flow)));
        var paper = Paper.screen(flow.width() + 2 * Paper.SCREEN_MARGIN);
        for (var page : Layout.of(piece.line(), piece.options().with(paper))) {
            page.parts().stream()
                    .filter(part -> part.group().role() == Role.SYSTEM)
                    .forEach(system -> chunks.add(chunk(system)));
        }
        return chunks;
    }

    private static Chunk chunk(Page.Part system) {
        var box = system.group().box();
        return new Chunk(List.of(system.moved(-box.left(), -box.top())), box.height(), BETWEEN, false);
    }
}
