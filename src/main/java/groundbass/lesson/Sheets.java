package groundbass.lesson;

import groundbass.analysis.Analysis;
import groundbass.document.HouseStyle;
import groundbass.document.Rights;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetPaper;
import groundbass.engraving.mark.BarPlace;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Aids;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.options.SheetOptions.Header;
import groundbass.engraving.options.SheetWords;
import groundbass.engraving.options.Staves;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.pdf.SheetMeta;
import groundbass.engraving.pdf.SheetPdf;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sheet.Layout.Piece;
import groundbass.engraving.sheet.Prose;
import groundbass.engraving.sheet.Sheet;
import groundbass.engraving.sheet.TextPart;
import groundbass.engraving.svg.SheetSvg;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/** Lines as printed sheets and as pictures for a page, in one language. Pure: the same line gives the same bytes. */
public final class Sheets {
    /** In staff spaces: more than what is lost where something is moved down and up again, so that halves round alike. */
    private static final double ROUNDED_UP = 1e-9;

    private final Messages messages;
    private final SheetWords words;
    private final TechniqueLetters letters;
    private final SheetAbbreviations abbreviations;
    private final Paper paper;
    private final SheetAids aids;
    private final boolean degrees;

    public Sheets(Messages messages) {
        this(messages, TechniqueLetters.usual(), SheetAbbreviations.NONE, Paper.A4, SheetAids.USUAL, false);
    }

    private Sheets(
            Messages messages,
            TechniqueLetters letters,
            SheetAbbreviations abbreviations,
            Paper paper,
            SheetAids aids,
            boolean degrees) {
        this.messages = messages;
        this.letters = letters;
        this.abbreviations = abbreviations;
        this.words = new PrintedWords(messages);
        this.paper = paper;
        this.aids = aids;
        this.degrees = degrees;
    }

    /** The same with the degrees of the chords under the notes of pictures, where the line has chords, else of the key. */
    public Sheets withDegrees() {
        return new Sheets(messages, letters, abbreviations, paper, aids, true);
    }

    /** The same in a series' style. Abbreviations are for paper: pictures keep every note, so that each can be lit and edited. */
    public Sheets with(HouseStyle style) {
        return new Sheets(
                messages,
                PrintedLetters.of(style.letters()),
                style.abbreviations(),
                paper(style.paper()),
                style.aids(),
                degrees);
    }

    /** The same on another paper. */
    public Sheets with(SheetPaper other) {
        return new Sheets(messages, letters, abbreviations, paper(other), aids, degrees);
    }

    /** The same with other helps for readers of printed sheets. */
    public Sheets with(SheetAids other) {
        return new Sheets(messages, letters, abbreviations, paper, other, degrees);
    }

    private static Paper paper(SheetPaper chosen) {
        return switch (chosen) {
            case A4 -> Paper.A4;
            case LETTER -> Paper.LETTER;
        };
    }

    /** The words on and about these sheets. */
    public Messages messages() {
        return messages;
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
            return new Header(lineTitle, series, rights.composer());
        }
    }

    /** Pages of one line and what is told of it, as a tagged PDF. */
    public byte[] pdf(Line line, Imprint imprint) {
        return pdf(List.of(ToldLine.of(line, messages)), imprint);
    }

    /** Pages of a line and its exercises, one after the other, and then the same in words. */
    public byte[] pdf(List<ToldLine> lines, Imprint imprint) {
        var options = SheetOptions.of(
                        paper,
                        words,
                        Header.NONE,
                        imprint.footer().withRights(imprint.rights().statement()))
                .with(letters)
                .withSimile(abbreviations.simile())
                .withRestsTogether(abbreviations.restsTogether());
        var pages = new ArrayList<>(Layout.of(pieces(lines, imprint), options));
        pages.addAll(Prose.pages(chapters(lines, imprint.title()), options));
        var alternatives = lines.stream()
                .map(line -> alternatives(chapter(line, imprint.title())))
                .toList();
        return pdf(new Sheet(pages, alternatives).numbered(imprint.title(), words), imprint);
    }

    private List<Piece> pieces(List<ToldLine> lines, Imprint imprint) {
        var pieces = new ArrayList<Piece>();
        for (var told : lines) {
            String title = title(told.line(), imprint.title());
            var header = pieces.isEmpty() ? imprint.header(title) : new Header(title, "", "");
            pieces.add(new Piece(Writing.of(told.line()), header, aids(!pieces.isEmpty())));
        }
        return pieces;
    }

    private Aids aids(boolean exercise) {
        boolean counts =
                switch (aids.counts()) {
                    case ALL -> true;
                    case NONE -> false;
                    case EXERCISES -> exercise;
                };
        return new Aids(counts, aids.everyBar());
    }

    private List<TextPart> chapters(List<ToldLine> lines, String title) {
        return lines.stream()
                .map(told -> told.chapter(chapter(told, title), messages))
                .toList();
    }

    private String chapter(ToldLine told, String title) {
        return messages.say("sheet.told", title(told.line(), title));
    }

    /** What stands for the picture of a system: which bars it shows, and where they are told, which is not said twice. */
    private Function<Passage, String> alternatives(String chapter) {
        return system -> messages.say("sheet.system.told", ToldEvents.bars(system, messages), chapter);
    }

    private static String title(Line line, String title) {
        return line.header().title().isEmpty() ? title : line.header().title();
    }

    /**
     * One picture of the whole line.
     *
     * @param width in staff spaces: about 48 for a phone, 110 for a desk
     * @param idPrefix differs among the pictures of one page
     */
    public String svg(Line line, double width, String idPrefix) {
        return svg(line, width, Staves.BOTH, idPrefix);
    }

    /** The same with one of the two staves, or with both. */
    public String svg(Line line, double width, Staves staves, String idPrefix) {
        var page = screen(line, width, staves);
        String title = line.header().title();
        return SheetSvg.of(
                page,
                idPrefix,
                messages.locale().toLanguageTag(),
                title,
                messages.say("sheet.described"),
                ToldEvents.of(line, messages));
    }

    /** The same as a file that stands alone, with its fonts. */
    public String svgAlone(Line line, double width) {
        var told = ToldEvents.of(line, messages);
        return SheetSvg.alone(
                screen(line, width),
                messages.locale().toLanguageTag(),
                line.header().title(),
                told.telling().opening(),
                told);
    }

    /** A system of a line on a screen, in a picture of its own, and where its bars lie in it. */
    public record DrawnSystem(String svg, double width, List<BarPlace> bars) {
        public DrawnSystem {
            bars = List.copyOf(bars);
        }
    }

    /** The systems of a line from above, without what stands around them; all drawn at one size. */
    public List<DrawnSystem> systems(Line line, double width, String idPrefix) {
        return systems(line, width, idPrefix, UnaryOperator.identity());
    }

    /** The same, each measured from its own top: a system is drawn as before where one above it grows. */
    public List<DrawnSystem> systemsApart(Line line, double width, String idPrefix) {
        return systems(
                line,
                width,
                idPrefix,
                part -> part.moved(0, ROUNDED_UP - part.group().box().top()));
    }

    private List<DrawnSystem> systems(Line line, double width, String idPrefix, UnaryOperator<Page.Part> placed) {
        var page = screen(line, width);
        var systems = new ArrayList<DrawnSystem>();
        for (var part : page.parts()) {
            if (part.group().role() == Group.Role.SYSTEM) {
                systems.add(system(page, placed.apply(part), idPrefix + systems.size() + "-"));
            }
        }
        return systems;
    }

    private DrawnSystem system(Page page, Page.Part part, String idPrefix) {
        var first = part.bars().get(0).number();
        var last = part.bars().get(part.bars().size() - 1).number();
        String svg = SheetSvg.of(
                page,
                part,
                idPrefix,
                messages.locale().toLanguageTag(),
                first == last ? messages.say("sheet.system.one", first) : messages.say("sheet.system", first, last),
                messages.say("sheet.described"));
        return new DrawnSystem(svg, page.width(), part.bars());
    }

    private Page screen(Line line, double width) {
        return screen(line, width, Staves.BOTH);
    }

    private Page screen(Line line, double width, Staves staves) {
        var plain = SheetOptions.of(Paper.screen(width), words, Header.NONE, Footer.NONE)
                .with(letters)
                .with(staves);
        var options = degrees ? plain.withFigures(Analysis.of(line)::figures) : plain;
        return Layout.of(Writing.of(line), options).get(0);
    }

    private byte[] pdf(Sheet sheet, Imprint imprint) {
        var meta = new SheetMeta(
                imprint.title(),
                imprint.rights().composer(),
                messages.locale().toLanguageTag(),
                imprint.made(),
                imprint.id());
        var out = new ByteArrayOutputStream();
        try {
            SheetPdf.write(sheet, meta, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
