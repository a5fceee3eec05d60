package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.sheet.Layout;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.util.Set;

/** A line's first bars as music alone, to stand for it where there is little room. */
final class FirstBars {
    private FirstBars() {}

    /**
     * As large as they can stand in a frame.
     *
     * @param hidden what of the drawing is left out
     * @param width, height of the frame in pixels
     * @param largest pixels to a staff space that look well
     */
    static LargestPage of(
            Line line, int bars, Set<Kind> hidden, Messages messages, double width, double height, double largest) {
        var options = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE)
                .withLegend(false);
        var written = Writing.of(beginning(line, bars));
        return LargestPage.of(spaces -> page(written, options, spaces, hidden), width, height, largest);
    }

    /** The whole line, where its beginning cannot stand alone. */
    private static Line beginning(Line line, int bars) {
        int first = line.firstNumber();
        int last = first + Math.min(bars, line.bars().size()) - 1;
        return Extract.bars(line, first, last).orElse(line);
    }

    private static Page page(WrittenLine line, SheetOptions options, double spaces, Set<Kind> hidden) {
        var page = Layout.of(line, options.with(Paper.screen(spaces))).get(0);
        for (var kind : hidden) {
            page = page.without(kind);
        }
        return page;
    }
}
