package groundbass.release;

import groundbass.catalog.Rights;
import groundbass.engraving.Layout;
import groundbass.engraving.Page;
import groundbass.engraving.Paper;
import groundbass.engraving.Sheet;
import groundbass.engraving.SheetMeta;
import groundbass.engraving.SheetOptions;
import groundbass.engraving.SheetOptions.Footer;
import groundbass.engraving.SheetOptions.Header;
import groundbass.engraving.SheetPdf;
import groundbass.engraving.SheetSvg;
import groundbass.engraving.SheetWords;
import groundbass.score.Line;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/** Lines as printed sheets and as pictures for a page, in one language. Pure: the same line gives the same bytes. */
public final class Sheets {
    private final Messages messages;

    public Sheets(Messages messages) {
        this.messages = messages;
    }

    /** What a sheet says around its music. */
    public record Imprint(String title, String series, Rights rights, Footer footer, Instant made, long id) {
        /** A line alone, outside any series. */
        public static Imprint of(Line line) {
            var header = line.header();
            return new Imprint(
                    header.title(),
                    "",
                    new Rights(header.composer(), "", header.rights()),
                    Footer.NONE,
                    Instant.EPOCH,
                    0);
        }

        Header header(String lineTitle) {
            return new Header(lineTitle, series, rights.composer(), rights.statement());
        }
    }

    /** A4 pages of one line as a tagged PDF. */
    public byte[] pdf(Line line, Imprint imprint) {
        return pdf(List.of(sheet(line, imprint, new PrintedWords(messages))), imprint);
    }

    /** A4 pages of a line and its exercises, each beginning on a page of its own, numbered through. */
    public byte[] pdf(Line main, List<Line> exercises, Imprint imprint) {
        var lines = new ArrayList<>(List.of(main));
        lines.addAll(exercises);
        var words = new PrintedWords(messages);
        int count = lines.stream()
                .mapToInt(line -> pages(line, imprint, words).size())
                .sum();
        var sheets = new ArrayList<Sheet>();
        int done = 0;
        for (var line : lines) {
            var sheet = sheet(line, imprint, words.numbered(done, count));
            sheets.add(sheet);
            done += sheet.pages().size();
        }
        return pdf(sheets, imprint);
    }

    private Sheet sheet(Line line, Imprint imprint, SheetWords words) {
        return new Sheet(pages(line, imprint, words), Walkthrough.alternatives(line, messages));
    }

    private static List<Page> pages(Line line, Imprint imprint, SheetWords words) {
        String title = line.header().title().isEmpty()
                ? imprint.title()
                : line.header().title();
        return Layout.of(Writing.of(line), SheetOptions.of(Paper.A4, words, imprint.header(title), imprint.footer()));
    }

    /**
     * One picture of the whole line.
     *
     * @param width in staff spaces: about 48 for a phone, 110 for a desk
     * @param idPrefix differs among the pictures of one page
     */
    public String svg(Line line, double width, String idPrefix) {
        var options = SheetOptions.of(Paper.screen(width), new PrintedWords(messages), Header.NONE, Footer.NONE);
        var page = Layout.of(Writing.of(line), options).get(0);
        String title = line.header().title();
        return SheetSvg.of(page, idPrefix, messages.locale().toLanguageTag(), title, messages.say("sheet.described"));
    }

    private byte[] pdf(List<Sheet> sheets, Imprint imprint) {
        var meta = new SheetMeta(
                imprint.title(),
                imprint.rights().composer(),
                messages.locale().toLanguageTag(),
                imprint.made(),
                imprint.id());
        var out = new ByteArrayOutputStream();
        try {
            SheetPdf.write(sheets, meta, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
