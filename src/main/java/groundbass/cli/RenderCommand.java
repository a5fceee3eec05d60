package groundbass.cli;

import groundbass.audio.Mp3;
import groundbass.audio.Wav;
import groundbass.braille.BrailleSheet;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetPaper;
import groundbass.engraving.png.SheetPng.Ink;
import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.lesson.Gallery;
import groundbass.lesson.Sheets;
import groundbass.lesson.VideoFrame;
import groundbass.lesson.VideoPictures;
import groundbass.linetext.Reading;
import groundbass.midi.MidiFile;
import groundbass.musicxml.CompressedMusicXml;
import groundbass.musicxml.MusicXmlFile;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.plaintab.PlainTab;
import groundbass.release.play.Tape;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.sound.mix.Mix;
import groundbass.walkthrough.Depth;
import groundbass.walkthrough.Step;
import groundbass.walkthrough.Walkthrough;
import groundbass.walkthrough.words.Naming;
import groundbass.web.view.StandalonePage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;

/** {@code render}: line files become sheets, MIDI and words, without a server. */
@Command(
        name = "render",
        mixinStandardHelpOptions = true,
        description =
                "Writes what is made of line files: DIR/<name of the line file>.<pdf|svg|png|mid|wav|mp3|musicxml|mxl|tab.txt|brf|braille.txt|txt>.")
public final class RenderCommand implements Callable<Integer> {
    /** What can be written of a line; the word in {@code --only}. */
    enum Output {
        PDF("pdf"),
        SVG("svg"),
        PNG("png"),
        MID("mid"),
        WAV("wav"),
        MP3("mp3"),
        MUSICXML("musicxml"),
        MXL("mxl"),
        TAB("tab.txt"),
        BRF("brf"),
        BRAILLE("braille.txt"),
        WALKTHROUGH("txt");

        private final String ending;

        Output(String ending) {
            this.ending = ending;
        }
    }

    private static final double DESK_WIDTH = 110;

    /** Reads {@code a4} and {@code letter}. */
    static final class PaperSize implements ITypeConverter<SheetPaper> {
        @Override
        public SheetPaper convert(String text) {
            return Arrays.stream(SheetPaper.values())
                    .filter(paper -> paper.toString().equals(text.strip().toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is neither a4 nor letter"));
        }
    }

    @Option(
            names = "--paper",
            paramLabel = "a4|letter",
            description = "Of the sheet (pdf).",
            converter = PaperSize.class)
    private SheetPaper paper = SheetPaper.A4;

    @Option(names = "--counts", description = "Writes under the staves of the sheet (pdf) how its bars are counted.")
    private boolean counts;

    @Option(names = "--number-bars", description = "Numbers every bar of the sheet (pdf).")
    private boolean numberBars;

    @Mixin
    private LineFiles files;

    @Option(names = "--out", paramLabel = "DIR", description = "Folder to write to; made if missing.")
    private Optional<Path> out = Optional.empty();

    @Option(
            names = "--gallery",
            paramLabel = "DIR",
            description =
                    "Writes an example of everything that is engraved, with its rule, as gallery.html and gallery.pdf.")
    private Optional<Path> gallery = Optional.empty();

    @Option(
            names = "--soundcheck",
            paramLabel = "DIR",
            description = "Writes a short sound of everything that is synthesized, with a page: DIR/index.html.")
    private Optional<Path> soundcheck = Optional.empty();

    @Option(
            names = "--only",
            split = ",",
            paramLabel = "KIND",
            description =
                    "pdf, svg, png, mid, wav, mp3, musicxml, mxl, tab, brf, braille, walkthrough; without it pdf, svg and mid.")
    private Set<Output> only = EnumSet.of(Output.PDF, Output.SVG, Output.MID);

    @Mixin
    private Selection selection;

    @Option(
            names = "--height",
            paramLabel = "PIXELS",
            description = "Of the video frame that pictures are for: 1080 or 2160.",
            converter = FrameHeight.class)
    private VideoFrame frame = VideoFrame.HD;

    @Option(
            names = "--ink",
            paramLabel = "dark|light",
            description = "Of pictures; what is behind the ink shows through.")
    private Ink ink = Ink.DARK;

    @Spec
    private CommandSpec command;

    @Option(
            names = "--tempo",
            paramLabel = "PERCENT",
            description = "How fast, such as 60%%.",
            converter = Percent.class)
    private int tempo = 100;

    @Mixin
    private Playback playback;

    @Mixin
    private Language language;

    @Option(
            names = "--names",
            paramLabel = "usual|british|international",
            description =
                    "Whose names of notes and their lengths the walkthrough has; without it those of the language.",
            converter = Language.Names.class)
    private Optional<Naming> names = Optional.empty();

    @Option(
            names = "--depth",
            paramLabel = "brief|full",
            description = "Of the walkthrough: one step a bar, or one a beat.",
            converter = HowMuch.class)
    private Depth depth = Depth.FULL;

    @Option(names = "--degrees", description = "Writes the degrees of chord or key under the notes of pictures (svg).")
    private boolean degrees;

    /** Reads {@code 60%} and {@code 60}. */
    static final class Percent implements ITypeConverter<Integer> {
        private static final Pattern FIGURE = Pattern.compile("(\\d{1,4})%?");

        @Override
        public Integer convert(String text) {
            var figure = FIGURE.matcher(text.strip());
            int percent = figure.matches() ? Integer.parseInt(figure.group(1)) : 0;
            if (percent < Playing.SLOWEST || percent > Playing.FASTEST) {
                throw new TypeConversionException(
                        "'" + text + "' is no percentage from " + Playing.SLOWEST + "% to " + Playing.FASTEST + "%");
            }
            return percent;
        }
    }

    /** Reads {@code brief} and {@code full}. */
    static final class HowMuch implements ITypeConverter<Depth> {
        @Override
        public Depth convert(String text) {
            return Depth.parse(text)
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is neither brief nor full"));
        }
    }

    /** Reads {@code 1080} and {@code 2160}. */
    static final class FrameHeight implements ITypeConverter<VideoFrame> {
        @Override
        public VideoFrame convert(String text) {
            return Optional.of(text.strip())
                    .filter(figure -> figure.matches("\\d{1,5}"))
                    .flatMap(figure -> VideoFrame.ofHeight(Integer.parseInt(figure)))
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is neither 1080 nor 2160"));
        }
    }

    @Override
    public Integer call() throws IOException {
        if (selection.isContradictory()) {
            throw new ParameterException(command.commandLine(), "--bars and --system cannot both be given");
        }
        if (names.filter(naming -> !language.has(naming)).isPresent()) {
            throw new ParameterException(
                    command.commandLine(),
                    "--names " + names.get().word() + ": these names are not used in the language of --language");
        }
        if (gallery.isPresent()) {
            writeGallery(gallery.get());
        }
        if (soundcheck.isPresent()) {
            Soundcheck.write(soundcheck.get(), language.messages());
        }
        if ((gallery.isPresent() || soundcheck.isPresent()) && out.isEmpty()) {
            return CommandLine.ExitCode.OK;
        }
        Files.createDirectories(folder());
        refuseTwins();
        return files.each(language.messages(), Reading::problems, this::write);
    }

    /** What is made of one file must not take the place of what is made of another. */
    private void refuseTwins() {
        files.twin(FileStem::of).ifPresent(twin -> {
            throw new ParameterException(
                    command.commandLine(),
                    twin + ": another of the files is called '" + FileStem.of(twin)
                            + "', too, and would be written over it; give each an --out of its own");
        });
    }

    private void write(Path file, Reading reading) throws IOException {
        var line = selection
                .of(reading.line(), new VideoPictures(language.messages()))
                .orElseThrow(() -> new ParameterException(
                        command.commandLine(), file + " has nothing of what --bars or --system asks for"));
        for (var output : only) {
            Files.write(target(file, output), bytes(line, output));
        }
    }

    private Path folder() {
        return out.orElseThrow(
                () -> new ParameterException(command.commandLine(), "Missing required option: '--out=DIR'"));
    }

    private static void writeGallery(Path folder) throws IOException {
        Files.createDirectories(folder);
        var examples = new Gallery();
        var page = new GalleryPage(Gallery.TITLE, examples.shown());
        Files.writeString(folder.resolve("gallery.html"), StandalonePage.of("gallery", Locale.ENGLISH, page));
        Files.write(folder.resolve("gallery.pdf"), examples.pdf());
    }

    private Path target(Path file, Output output) {
        return folder().resolve(FileStem.of(file) + selection.suffix() + "." + output.ending);
    }

    private byte[] bytes(Line line, Output output) throws IOException {
        var messages = language.messages();
        var sheets = new Sheets(messages);
        return switch (output) {
            case PDF -> sheets.with(paper).with(aids()).pdf(line, Sheets.Imprint.of(line));
            case SVG ->
                (degrees ? sheets.withDegrees() : sheets)
                        .svgAlone(line, DESK_WIDTH)
                        .getBytes(StandardCharsets.UTF_8);
            case PNG -> new VideoPictures(messages).png(line, frame, ink);
            case MID -> midi(line);
            case WAV -> sounding(line, Wav::bytes);
            case MP3 -> sounding(line, Mp3::bytes);
            case MUSICXML -> MusicXmlFile.of(line);
            case MXL -> CompressedMusicXml.of(MusicXmlFile.of(line));
            case TAB -> rows(PlainTab.of(line, messages).stream()).getBytes(StandardCharsets.UTF_8);
            case BRF -> BrailleSheet.of(line, messages).brf();
            case BRAILLE -> BrailleSheet.of(line, messages).unicode();
            case WALKTHROUGH -> told(line).getBytes(StandardCharsets.UTF_8);
        };
    }

    private SheetAids aids() {
        return new SheetAids(counts ? CountsRow.ALL : CountsRow.NONE, numberBars);
    }

    /** Everything at once, with the groove that suits the line. */
    private byte[] sounding(Line line, Function<Sound, byte[]> encoder) throws IOException {
        try (var tape = Tape.record(line, groove(line), tempo)) {
            return encoder.apply(tape.mix(Mix.FULL, 1));
        }
    }

    private byte[] midi(Line line) {
        var performance = Performance.of(line, Playing.at(tempo));
        return MidiFile.of(performance, Band.of(performance, groove(line)), playback.opening());
    }

    private Groove groove(Line line) {
        return GrooveLibrary.suited(line).withInstruments(playback.instruments());
    }

    private String told(Line line) {
        var steps = Walkthrough.of(line, language.messages(), names.orElseGet(language::naming), depth);
        return rows(steps.stream().map(Step::text));
    }

    private static String rows(Stream<String> rows) {
        return rows.collect(Collectors.joining(System.lineSeparator(), "", System.lineSeparator()));
    }
}
