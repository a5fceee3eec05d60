package groundbass.release;

import groundbass.braille.BrailleSheet;
import groundbass.document.LineSource;
import groundbass.engraving.options.QrCode;
import groundbass.engraving.options.SheetOptions.Footer;
import groundbass.engraving.png.SheetPng;
import groundbass.groove.Band;
import groundbass.lesson.CardPicture;
import groundbass.lesson.Lesson;
import groundbass.lesson.LinkPicture;
import groundbass.lesson.PageContent;
import groundbass.lesson.PageContent.Picture;
import groundbass.lesson.PageContent.ToldContent;
import groundbass.lesson.PageContents;
import groundbass.lesson.Sheets;
import groundbass.lesson.ToldLine;
import groundbass.midi.MidiFile;
import groundbass.midi.Opening;
import groundbass.musicxml.MusicXmlFile;
import groundbass.performance.Performance;
import groundbass.plaintab.PlainTab;
import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.text.Languages;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import java.nio.charset.StandardCharsets;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Supplier;

/**
 * Every file but sound that is made of one lesson, each as something still to be done, so that a build can tell how far it is.
 * Pure: the same lesson and build specification give the same bytes.
 */
final class LessonFiles {
    private static final String SVG = "image/svg+xml";
    private static final String TEXT = "text/plain; charset=utf-8";
    private static final String BRAILLE = "text/plain; charset=us-ascii";

    /** A picture of the sheet: its name, its width in staff spaces, and the narrowest screen it is for in CSS pixels. */
    private record Size(String name, double spaces, int fromWidth) {}

    private static final List<Size> SIZES =
            List.of(new Size("narrow", 48, 0), new Size("medium", 72, 520), new Size("wide", 110, 800));

    private final Lesson lesson;
    private final NotePhotos photos;
    private final BuildSpec spec;
    private final Messages messages;
    private final Sheets sheets;

    /** By the stems of their files: both files of a line come from one. */
    private final Map<String, BrailleSheet> braille = new ConcurrentHashMap<>();

    private Optional<CardPicture> cardPicture = Optional.empty();

    LessonFiles(Lesson lesson, BuildSpec spec) {
        this(lesson, NotePhotos.NONE, spec);
    }

    LessonFiles(Lesson lesson, NotePhotos photos, BuildSpec spec) {
        this.photos = photos;
        this.lesson = lesson;
        this.spec = spec;
        this.messages =
                Messages.of(Locale.forLanguageTag(lesson.document().settings().language()));
        this.sheets = new Sheets(messages).with(spec.style());
    }

    Messages messages() {
        return messages;
    }

    /** What a reader opens first: the page with its pictures, and the sheet. */
    List<Supplier<Artifact>> first() {
        var steps = new ArrayList<Supplier<Artifact>>();
        steps.add(this::sheet);
        steps.addAll(pictures("line", lesson.main()));
        for (int i = 0; i < lesson.exercises().size(); i++) {
            steps.addAll(pictures(exerciseStem(i), lesson.exercises().get(i)));
        }
        steps.add(this::page);
        return steps;
    }

    /** In the order in which a reader is shown them, the sheet first. */
    List<Supplier<Artifact>> steps() {
        var steps = new ArrayList<Supplier<Artifact>>();
        steps.add(this::sheet);
        var credits = inTheLesson().or(Credits.of(lesson.main().header()));
        steps.addAll(written("line", lesson.main(), lesson.document().mainLine(), credits));
        if (spec.has(Feature.LINK_PICTURE)) {
            steps.add(this::linkPicture);
        }
        if (spec.has(Feature.CARD_PICTURES)) {
            steps.add(() -> cardPicture(ReleaseFile.CARD_PICTURE, SheetPng.Ink.DARK));
            steps.add(() -> cardPicture(ReleaseFile.CARD_PICTURE_AT_NIGHT, SheetPng.Ink.LIGHT));
        }
        for (int i = 0; i < lesson.exercises().size(); i++) {
            steps.addAll(exercise(i));
        }
        steps.add(this::page);
        return steps;
    }

    private List<Supplier<Artifact>> exercise(int index) {
        String stem = exerciseStem(index);
        var line = lesson.exercises().get(index);
        var credits = Credits.of(line.header()).or(inTheLesson());
        return written(stem, line, lesson.document().exercises().get(index), credits);
    }

    /** A line in every form in which it is written down. */
    private List<Supplier<Artifact>> written(String stem, Line line, LineSource source, Credits credits) {
        var steps = new ArrayList<Supplier<Artifact>>();
        steps.add(() -> midi(stem + ".mid", line, Opening.COUNT_IN));
        if (spec.has(Feature.MIDI_FROM_BAR_1)) {
            steps.add(() -> midi(ReleaseFile.fromBar1(stem), line, Opening.FIRST_BAR));
        }
        if (spec.has(Feature.MUSICXML)) {
            steps.add(() -> musicXml(stem, line, credits));
        }
        if (spec.has(Feature.PLAIN_TAB)) {
            steps.add(() -> plainTab(stem, line, credits));
        }
        if (spec.has(Feature.BRAILLE)) {
            steps.addAll(braille(stem, line, credits));
        }
        steps.add(() -> text(stem, source));
        steps.addAll(pictures(stem, line));
        return steps;
    }

    private static String exerciseStem(int index) {
        return ReleaseFile.exerciseStem(index + 1);
    }

    private Artifact sheet() {
        var document = lesson.document();
        String series = messages.say("sheet.series", spec.series(), spec.episodeNumber());
        String release =
                messages.say("sheet.release", spec.release(), spec.date().toString());
        var way = QrCode.of(spec.episodeAddress());
        var footer = new Footer("", release, messages.say("sheet.caution"), Optional.of(way));
        var made = spec.date().atStartOfDay(ZoneOffset.UTC).toInstant();
        var imprint = new Sheets.Imprint(document.title(), series, document.rights(), footer, made, spec.digest());
        return new Artifact("sheet.pdf", FileRole.SHEET, "application/pdf", sheets.pdf(told(), imprint));
    }

    /** The main line first, in the educator's words where there are such. */
    private List<ToldLine> told() {
        var told = new ArrayList<ToldLine>();
        told.add(new ToldLine(lesson.main(), lesson.walkthrough(0).read()));
        for (int i = 0; i < lesson.exercises().size(); i++) {
            told.add(new ToldLine(
                    lesson.exercises().get(i), lesson.walkthrough(i + 1).read()));
        }
        return told;
    }

    private Artifact midi(String name, Line line, Opening opening) {
        var performance = Performance.of(line);
        var groove = line == lesson.main() ? lesson.groove() : PlayAlong.band(lesson, line);
        var band = Band.of(performance, groove);
        return new Artifact(name, FileRole.MIDI, "audio/midi", MidiFile.of(performance, band, opening));
    }

    private static Artifact musicXml(String stem, Line line, Credits credits) {
        byte[] file = MusicXmlFile.of(Writing.of(line), credits);
        return new Artifact(stem + ".musicxml", FileRole.MUSICXML, MusicXmlFile.MEDIA_TYPE, file);
    }

    /** What the sheet says as well. */
    private Credits inTheLesson() {
        var rights = lesson.document().rights();
        return new Credits(
                lesson.document().title(),
                rights.composer(),
                rights.credit(),
                rights.statement(),
                spec.episodeAddress());
    }

    /** Rows end as on every system that a student may have. */
    private Artifact plainTab(String stem, Line line, Credits credits) {
        String rows = String.join("\r\n", PlainTab.of(line, credits, messages)) + "\r\n";
        return new Artifact(stem + ".tab.txt", FileRole.PLAIN_TAB, TEXT, rows.getBytes(StandardCharsets.UTF_8));
    }

    private List<Supplier<Artifact>> braille(String stem, Line line, Credits credits) {
        Supplier<BrailleSheet> sheet =
                () -> braille.computeIfAbsent(stem, one -> BrailleSheet.of(Writing.of(line), credits, messages));
        return List.of(
                () -> new Artifact(
                        stem + ".brf", FileRole.BRAILLE, BRAILLE, sheet.get().brf()),
                () -> new Artifact(
                        stem + ".braille.txt",
                        FileRole.BRAILLE_TEXT,
                        TEXT,
                        sheet.get().unicode()));
    }

    private Artifact text(String stem, LineSource source) {
        return new Artifact(
                stem + ".txt", FileRole.LINE_TEXT, TEXT, source.text().getBytes(StandardCharsets.UTF_8));
    }

    private List<Supplier<Artifact>> pictures(String stem, Line line) {
        return SIZES.stream()
                .map(size -> (Supplier<Artifact>) () -> picture(stem, line, size))
                .toList();
    }

    private Artifact picture(String stem, Line line, Size size) {
        String name = pictureName(stem, size);
        String svg = sheets.svg(line, size.spaces(), stem + "-" + size.name() + "-");
        return new Artifact(name, FileRole.PICTURE, SVG, svg.getBytes(StandardCharsets.UTF_8));
    }

    private Artifact linkPicture() {
        return new Artifact(
                ReleaseFile.LINK_PICTURE, FileRole.PICTURE, "image/png", LinkPicture.of(lesson.main(), messages));
    }

    private Artifact cardPicture(String name, SheetPng.Ink ink) {
        return new Artifact(name, FileRole.PICTURE, "image/png", cardPicture().in(ink));
    }

    /** Laid out once for both inks, whose steps may be done at the same time. */
    private synchronized CardPicture cardPicture() {
        var laidOut = cardPicture.orElseGet(() -> CardPicture.of(lesson.main(), messages));
        cardPicture = Optional.of(laidOut);
        return laidOut;
    }

    private static String pictureName(String stem, Size size) {
        return stem + "-" + size.name() + ".svg";
    }

    private Artifact page() {
        var lines = new ArrayList<PageContent.LineContent>();
        lines.add(PageContents.line(lesson.main(), pictureNames("line"), lesson.walkthrough(0), others(0)));
        for (int i = 0; i < lesson.exercises().size(); i++) {
            lines.add(PageContents.line(
                    lesson.exercises().get(i),
                    pictureNames(exerciseStem(i)),
                    lesson.walkthrough(i + 1),
                    others(i + 1)));
        }
        var content = PageContents.of(lesson, lines, photos.shown(), sheets);
        return new Artifact("page.json", FileRole.PAGE, "application/json", PageJson.write(content));
    }

    /** The walkthrough of a line in the languages that are not the lesson's. */
    private List<ToldContent> others(int line) {
        if (!spec.has(Feature.WALKTHROUGH_IN_EVERY_LANGUAGE)) {
            return List.of();
        }
        var own = Locale.forLanguageTag(lesson.document().settings().language());
        return Languages.SPOKEN.stream()
                .filter(other -> !other.getLanguage().equals(own.getLanguage()))
                .map(other -> PageContents.told(other.toLanguageTag(), lesson.walkthrough(line, other)))
                .toList();
    }

    private static List<Picture> pictureNames(String stem) {
        return SIZES.stream()
                .map(size -> new Picture(pictureName(stem, size), size.fromWidth()))
                .toList();
    }
}
