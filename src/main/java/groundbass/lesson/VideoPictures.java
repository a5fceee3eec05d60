package groundbass.lesson;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.png.SheetPng;
import groundbass.engraving.png.SheetPng.Ink;
import groundbass.engraving.sheet.Layout;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.util.Optional;

/** Some bars of a line as pictures for a video: notes alone, as large as the frame allows. */
public final class VideoPictures {
    private final SheetOptions options;

    public VideoPictures(Messages messages) {
        options = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE)
                .withLegend(false);
    }

    /** The whole of a line; take {@link Extract} of it for some bars. */
    public byte[] png(Line line, VideoFrame frame, Ink ink) {
        var written = Writing.of(line);
        var best = LargestPage.of(
                width -> page(written, width), frame.safeWidth(), frame.safeHeight(), frame.largestSpace());
        return SheetPng.of(best.page(), best.scale(), ink);
    }

    /** The bars of one system of the printed sheet, counted from 1; empty where it has no such system. */
    public Optional<Line> system(Line line, int number) {
        var systems = Layout.of(Writing.of(line), options).stream()
                .flatMap(page -> page.parts().stream())
                .filter(part -> !part.bars().isEmpty())
                .toList();
        return Optional.of(number)
                .filter(n -> n >= 1 && n <= systems.size())
                .map(n -> systems.get(n - 1).bars())
                .flatMap(bars -> Extract.bars(
                        line, bars.get(0).number(), bars.get(bars.size() - 1).number()));
    }

    /** Without the numbers of bars, which an extract counts anew. */
    private Page page(WrittenLine line, double width) {
        return Layout.of(line, options.with(Paper.screen(width))).get(0).without(Kind.BAR_NUMBER);
    }
}
