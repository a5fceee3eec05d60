package groundbass.demo;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.Level;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.identity.Slug;
import groundbass.linetext.LineText;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Fretted;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Properties;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The demo series is what it says it is: playable, musical, complete and marked as a demo. */
class SeedDataTest {
    private static final Path SERIES = Path.of("seed-data", "harbour-rounds");

    /** Notes a second that a trained player holds without strain (rule: speed-limits). */
    private static final double COMFORTABLE_SPEED = 6.7;

    /** From where a reach is a stretch on a 34-inch neck, in millimetres (rule: hand-reach). */
    private static final double COMFORTABLE_REACH = 105;

    /** A note as it sounds: when, from the start of the line, and over which chord. */
    private record Sounding(Fraction at, int midi, Set<Integer> scale, Optional<ChordSymbol> chord) {}

    static Stream<Path> episodes() throws IOException {
        try (var children = Files.list(SERIES)) {
            return children.filter(Files::isDirectory).sorted().toList().stream();
        }
    }

    static Stream<Path> lines() throws IOException {
        try (var files = Files.walk(SERIES)) {
            return files
                    .filter(file -> file.getFileName().toString().matches("(line|exercise-\\d)\\.txt"))
                    .sorted()
                    .toList()
                    .stream();
        }
    }

    @Test
    void thereAreSixEpisodesAWeekApart() throws IOException {
        assertThat(episodes().map(each -> each.getFileName().toString().substring(0, 2)))
                .containsExactly("01", "02", "03", "04", "05", "06");
        assertThat(episodes().map(each -> facts(each).getProperty("published.weeks.ago")))
                .containsExactly("5", "4", "3", "2", "1", "0");
    }

    @ParameterizedTest
    @MethodSource("lines")
    void everyLineReadsWithoutProblems(Path file) {
        assertThat(LineText.read(file.toString(), text(file)).problems()).isEmpty();
    }

    @ParameterizedTest
    @MethodSource("lines")
    void everyLineSaysWhoseItIs(Path file) {
        var header = line(file).header();
        assertThat(header.title()).isNotBlank();
        assertThat(header.composer()).contains("demo");
        assertThat(header.rights()).isEqualTo("Original demo material of the Groundbass project");
    }

    @ParameterizedTest
    @MethodSource("episodes")
    void aMainLineHasEightToSixteenBars(Path episode) {
        assertThat(main(episode).bars().stream().filter(bar -> !bar.isPickup())).hasSizeBetween(8, 16);
    }

    @ParameterizedTest
    @MethodSource("lines")
    void everyNoteBelongsToItsChordOrKeyOrLeadsToTheNextByASemitone(Path file) {
        var sounding = sounding(line(file));
        for (int i = 0; i < sounding.size(); i++) {
            var note = sounding.get(i);
            boolean fits = note.scale().contains(note.midi() % 12)
                    || note.chord().filter(chord -> hasTone(chord, note.midi())).isPresent();
            assertThat(fits || leads(note, sounding, i))
                    .as("MIDI %d at %s over %s", note.midi(), note.at(), note.chord())
                    .isTrue();
        }
    }

    @ParameterizedTest
    @MethodSource("lines")
    void everyChordBeginsOnOneOfItsTones(Path file) {
        var sounding = sounding(line(file));
        Optional<ChordSymbol> before = Optional.empty();
        for (var note : sounding) {
            if (!note.chord().equals(before) && note.chord().isPresent()) {
                assertThat(hasTone(note.chord().get(), note.midi()))
                        .as("MIDI %d at %s begins %s", note.midi(), note.at(), note.chord())
                        .isTrue();
            }
            before = note.chord();
        }
    }

    @ParameterizedTest
    @MethodSource("lines")
    void noLineIsFasterThanHandsAreComfortableWith(Path file) {
        var line = line(file);
        var tempo = line.header().tempo();
        for (var bar : line.bars()) {
            var onsets = bar.notes().stream().map(Note::onset).distinct().toList();
            for (int i = 1; i < onsets.size(); i++) {
                double seconds = tempo.seconds(onsets.get(i).minus(onsets.get(i - 1)));
                assertThat(1 / seconds).as("%s", onsets.get(i)).isLessThanOrEqualTo(COMFORTABLE_SPEED);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("lines")
    void notesThatSoundTogetherAreWithinReach(Path file) {
        for (var bar : line(file).bars()) {
            for (var one : bar.notes()) {
                for (var other : bar.notes()) {
                    if (!other.onset().isBefore(one.onset()) && one.end().isAfter(other.onset())) {
                        assertThat(reach(one, other)).as("%s, %s", one, other).isLessThanOrEqualTo(COMFORTABLE_REACH);
                    }
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("episodes")
    void whatAnEpisodeSaysItTrainsOccursInItsLine(Path episode) {
        var words = new HashSet<String>();
        main(episode).bars().forEach(bar -> bar.notes().forEach(note -> words.addAll(words(note))));
        assertThat(words).contains(facts(episode).getProperty("techniques").split(" "));
    }

    @Test
    void theSixGroovesAreDifferent() throws IOException {
        var mains = episodes().map(SeedDataTest::main).toList();
        assertThat(mains.stream().map(line -> line.header().title())).doesNotHaveDuplicates();
        assertThat(mains.stream().map(line -> line.header().key())).doesNotHaveDuplicates();
        assertThat(mains.stream()
                        .map(line -> List.of(
                                line.header().meter(),
                                line.header().feel(),
                                line.header().tuning(),
                                line.header().style())))
                .doesNotHaveDuplicates();
        assertThat(mains.stream().map(line -> line.bars().get(1).notes())).doesNotHaveDuplicates();
    }

    @Test
    void theSixShowTheForm() throws IOException {
        String all = episodes().map(each -> text(each.resolve("line.txt"))).collect(Collectors.joining());
        assertThat(all)
                .contains("section ", "= bar 1\n", "counts 1-3", "until 3", "bar 0", "repeat start", "ending 2")
                .contains(
                        "swing 8ths 2:1", "half-time", "7/8 (2+2+3)", "12/8", "strings   B E A D G", "ring", "fermata")
                .contains("slide from 3", "hammer", "pull", "ghost", "accent", " with 4", "# ");
    }

    @ParameterizedTest
    @MethodSource("episodes")
    void theDrumsFitTheLine(Path episode) {
        assertThat(groove(episode).meter()).isEqualTo(main(episode).header().meter());
    }

    @ParameterizedTest
    @MethodSource("episodes")
    void anEpisodeIsCompleteCautiousAndMarkedAsADemo(Path episode) {
        var facts = facts(episode);
        assertThat(Level.parse(facts.getProperty("level"))).isPresent();
        assertThat(facts).containsEntry("demo", "true").containsKeys("title", "summary", "credit");
        assertThat(facts.getProperty("rights")).contains("Original demo material");
        assertThat(Slug.parse(episode.getFileName().toString().substring(3))).isPresent();
        assertThat(facts.getProperty("title")).isEqualTo(main(episode).header().title());
        assertThat(episode.resolve("exercise-1.txt")).exists();
        assertThat(text(episode.resolve("notes.md")))
                .startsWith("*Demo lesson")
                .contains("## What it trains", "## How to practise it", "## Common mistakes")
                .contains("## For your hands and ears")
                .matches("(?s).*\\b(pain|hurt).*");
    }

    @Test
    void theSeriesIsMarkedAsADemo() {
        var facts = properties(SERIES.resolve("series.properties"));
        assertThat(facts).containsEntry("demo", "true").containsEntry("slug", "harbour-rounds");
        assertThat(facts.getProperty("title")).contains("demo");
        assertThat(facts.getProperty("studio")).contains("invented");
        assertThat(ZoneId.of(facts.getProperty("zone"))).isNotNull();
    }

    @Test
    void inventedDownloadsFollowTheirEpisodes() throws IOException {
        var rows = Files.readAllLines(SERIES.resolve("downloads.csv")).stream()
                .filter(row -> !row.startsWith("#"))
                .toList();
        assertThat(rows.get(0)).isEqualTo("episode,weeks_ago,file,by_students,anonymous,broken_off");
        assertThat(rows).hasSizeGreaterThan(30);
        for (var row : rows.subList(1, rows.size())) {
            var cells = row.split(",");
            var episode = SERIES.resolve(cells[0]);
            assertThat(episode).isDirectory();
            int published = Integer.parseInt(facts(episode).getProperty("published.weeks.ago"));
            assertThat(Integer.parseInt(cells[1])).as(row).isBetween(0, published);
            assertThat(cells[2]).isIn("bundle", "sheet.pdf", "line.mid");
            assertThat(Stream.of(cells).skip(3).map(Integer::parseInt))
                    .isNotEmpty()
                    .allMatch(count -> count >= 0);
        }
    }

    private static Set<String> words(Note note) {
        var words = new HashSet<String>();
        note.pluck().ifPresent(technique -> words.add(technique.word()));
        note.arrival().ifPresent(arrival -> words.add(arrival.kind().word()));
        note.ornaments().marks().stream().map(Mark::word).forEach(words::add);
        if (note.isDead()) {
            words.add("dead");
        }
        return words;
    }

    private static List<Sounding> sounding(Line line) {
        var all = new ArrayList<Sounding>();
        var start = Fraction.ZERO;
        Optional<ChordSymbol> chord = Optional.empty();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var before = chord;
            var scale = line.inForce().get(i).key().scale().stream()
                    .map(NoteName::pitchClass)
                    .collect(Collectors.toSet());
            for (var note : bar.notes()) {
                var here = bar.chords().stream()
                        .filter(each -> !each.at().isAfter(note.onset()))
                        .reduce((one, two) -> two);
                var over = here.map(ChordAt::chord).or(() -> before);
                var at = start.plus(note.onset()).minus(bar.from());
                note.midi(line.header().tuning()).ifPresent(midi -> all.add(new Sounding(at, midi, scale, over)));
            }
            chord = bar.chords().stream()
                    .map(ChordAt::chord)
                    .reduce((one, two) -> two)
                    .or(() -> before);
            start = start.plus(bar.length());
        }
        return all;
    }

    private static boolean hasTone(ChordSymbol chord, int midi) {
        var bass = chord instanceof Chord named ? named.bass().stream() : Stream.<NoteName>empty();
        return Stream.concat(chord.tones().stream(), bass).anyMatch(tone -> tone.pitchClass() == midi % 12);
    }

    /** Whether the next pitch, or the first of the line after its last, is a semitone away in any octave. */
    private static boolean leads(Sounding note, List<Sounding> all, int index) {
        int next = all.get((index + 1) % all.size()).midi();
        int distance = Math.floorMod(next - note.midi(), 12);
        return distance == 1 || distance == 11;
    }

    /** Between two stopped notes on a 34-inch neck: rule: fret-distance. */
    private static double reach(Note one, Note other) {
        if (!(one.place() instanceof Fretted a) || !(other.place() instanceof Fretted b) || a.fret() * b.fret() == 0) {
            return 0;
        }
        return Math.abs(863.6 * (Math.pow(2, -a.fret() / 12.0) - Math.pow(2, -b.fret() / 12.0)));
    }

    private static Groove groove(Path episode) {
        String name = facts(episode).getProperty("groove");
        if (!name.isEmpty()) {
            return GrooveLibrary.named(name).orElseThrow();
        }
        var reading = GrooveText.read(text(episode.resolve("groove.txt")));
        assertThat(reading.problems()).isEmpty();
        return reading.groove().orElseThrow();
    }

    private static Line main(Path episode) {
        return line(episode.resolve("line.txt"));
    }

    private static Line line(Path file) {
        return LineText.read(file.toString(), text(file)).line();
    }

    private static Properties facts(Path episode) {
        return properties(episode.resolve("episode.properties"));
    }

    private static Properties properties(Path file) {
        try (var reader = Files.newBufferedReader(file)) {
            var properties = new Properties();
            properties.load(reader);
            return properties;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
