package groundbass.lesson;

import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.pdf.SheetMeta;
import groundbass.engraving.pdf.SheetPdf;
import groundbass.engraving.sheet.Exhibition;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sheet.Sheet;
import groundbass.engraving.svg.SheetSvg;
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
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Every feature of the engraving in a small example beside its rule and the rule's source, for a person to look over
 * before a release. For contributors, so in English only.
 */
public final class Gallery {
    public static final String TITLE = "Gallery of the engraving";
    private static final String EXAMPLES = "/groundbass/lesson/gallery.txt";
    private static final String RULES = "/docs/engraving-rules.md";
    private static final double SCREEN = 90;

    private final Messages messages = Messages.of(Locale.ENGLISH);
    private final SheetOptions usual = SheetOptions.of(Paper.A4, new PrintedWords(messages), Header.NONE, Footer.NONE);
    private final RuleBook book = RuleBook.read(resource(RULES));
    private final List<Exhibit> exhibits = Exhibit.read(resource(EXAMPLES));

    /**
     * An example as it is shown.
     *
     * @param look what somebody who looks it over should see
     * @param svg its drawing, with ids that no other has
     * @param text the line
     */
    public record Shown(String title, String look, List<RuleBook.Rule> rules, String svg, String text) {
        public Shown {
            rules = List.copyOf(rules);
        }
    }

    private static String resource(String name) {
        try (var in = Objects.requireNonNull(
                Gallery.class.getResourceAsStream(name), () -> name + " is not on the class path")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Exhibit> exhibits() {
        return exhibits;
    }

    /** What the rules of an example say, and who says so. */
    List<RuleBook.Rule> rules(Exhibit exhibit) {
        return exhibit.rules().stream()
                .map(name -> book.find(name)
                        .orElseThrow(() -> new IllegalStateException(
                                "\"" + exhibit.title() + "\" shows " + name + ", which is no rule of ours")))
                .toList();
    }

    /** All examples, each with its drawing. */
    public List<Shown> shown() {
        return IntStream.range(0, exhibits.size()).mapToObj(this::shown).toList();
    }

    private Shown shown(int i) {
        var exhibit = exhibits.get(i);
        return new Shown(exhibit.title(), exhibit.look(), rules(exhibit), svg(exhibit, "g" + i + "-"), exhibit.text());
    }

    public byte[] pdf() {
        var shown = exhibits.stream().map(this::piece).toList();
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

    private Exhibition.Piece piece(Exhibit exhibit) {
        var told = rules(exhibit).stream().map(rule -> rule.sentence() + " Source: " + rule.source());
        return new Exhibition.Piece(
                exhibit.title(),
                Stream.concat(Stream.of(exhibit.look()), told).toList(),
                Writing.of(exhibit.reading().line()),
                exhibit.options(usual));
    }

    private Function<Passage, String> words(Exhibit exhibit) {
        return Walkthrough.alternatives(exhibit.reading().line(), messages);
    }
}
