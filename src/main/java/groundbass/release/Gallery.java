package groundbass.release;

import groundbass.engraving.Exhibition;
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
import groundbass.score.Passage;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Function;

/**
 * Every feature of the engraving in a small example beside its rule and the rule's source, for a person to look over
 * before a release. For contributors, so in English only.
 */
public final class Gallery {
    private static final String TITLE = "Gallery of the engraving";
    private static final String RESOURCE = "/groundbass/release/gallery.txt";
    private static final double SCREEN = 90;

    private final Messages messages = Messages.of(Locale.ENGLISH);
    private final SheetOptions usual = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE);
    private final List<Exhibit> exhibits;

    public Gallery() {
        try (var in = Objects.requireNonNull(Gallery.class.getResourceAsStream(RESOURCE))) {
            exhibits = Exhibit.read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Exhibit> exhibits() {
        return exhibits;
    }

    /** One page that needs nothing else. */
    public String html() {
        var page = new GalleryPage(TITLE);
        for (int i = 0; i < exhibits.size(); i++) {
            page.add(exhibits.get(i), svg(exhibits.get(i), "g" + i + "-"));
        }
        return page.html();
    }

    public byte[] pdf() {
        var shown = exhibits.stream().map(this::shown).toList();
        var words = exhibits.stream().map(this::words).toList();
        var sheet = new Sheet(Exhibition.pages(TITLE, shown, usual), words).numbered(TITLE, new PrintedWords(messages));
        var out = new ByteArrayOutputStream();
        try {
            SheetPdf.write(sheet, new SheetMeta(TITLE, "", "en", Instant.EPOCH, 1), out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    Page screen(Exhibit exhibit) {
        var options = exhibit.options(usual).with(Paper.screen(SCREEN));
        return Layout.of(Writing.of(exhibit.reading().line()), options).get(0);
    }

    private String svg(Exhibit exhibit, String idPrefix) {
        return SheetSvg.of(
                screen(exhibit),
                idPrefix,
                "en",
                exhibit.title(),
                exhibit.look(),
                ToldEvents.of(exhibit.reading().line(), messages));
    }

    private Exhibition.Piece shown(Exhibit exhibit) {
        return new Exhibition.Piece(
                exhibit.title(),
                List.of(exhibit.look(), "Rule " + exhibit.rule() + ". Source: " + exhibit.source() + "."),
                Writing.of(exhibit.reading().line()),
                exhibit.options(usual));
    }

    private Function<Passage, String> words(Exhibit exhibit) {
        return Walkthrough.alternatives(exhibit.reading().line(), messages);
    }
}
