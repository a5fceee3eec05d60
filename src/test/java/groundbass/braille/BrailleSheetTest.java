package groundbass.braille;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.braille.BrailleReader.Moment;
import groundbass.braille.BrailleReader.Tone;
import groundbass.linetext.LineText;
import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Direction;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.text.Messages;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import groundbass.writing.Writing;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Whole sheets: what a reader finds in them, and how they are laid out. */
class BrailleSheetTest {
    /** Of a row (rule: braille-rows). */
    private static final int CELLS = 40;

    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);
    private static final int RANDOM = 40;

    /** Ties of two voices on one step, words behind words, signs behind what fills a row. */
    private static final List<Long> WERE_MISREAD = List.of(73L, 81L, 329L, 374L, 376L);

    private static Map<String, Line> lines() throws IOException {
        var lines = new LinkedHashMap<String, Line>();
        try (Stream<Path> files = Files.walk(Path.of("seed-data"))) {
            for (var file :
                    files.filter(each -> each.endsWith("line.txt")).sorted().toList()) {
                lines.put(
                        file.toString(),
                        LineText.read("line.txt", Files.readString(file)).line());
            }
        }
        for (long seed = 1; seed <= RANDOM; seed++) {
            lines.put("seed " + seed, RandomLines.line(seed));
        }
        WERE_MISREAD.forEach(seed -> lines.put("seed " + seed, RandomLines.line(seed)));
        return lines;
    }

    private static List<String> rows(Line line) {
        return BrailleSheet.of(line, ENGLISH).rows().stream().map(Cells::ascii).toList();
    }

    /** What follows the signatures, without sections and without the chords behind it. */
    private static List<String> music(List<String> rows) {
        int head = rows.indexOf("");
        var behind = rows.subList(head + 2, rows.size());
        int chords = behind.indexOf("");
        return behind.subList(0, chords < 0 ? behind.size() : chords).stream()
                .filter(row -> !row.startsWith("    "))
                .toList();
    }

    /** What the written line has, in the reader's terms; the lower voice first. */
    private static List<List<Moment>> expected(WrittenBar bar) {
        return downward(bar).stream()
                .map(voice ->
                        voice.elements().stream().map(BrailleSheetTest::moment).toList())
                .toList();
    }

    private static List<Voice> downward(WrittenBar bar) {
        var voices = new ArrayList<Voice>();
        bar.voices().forEach(voice -> voices.add(0, voice));
        return voices;
    }

    private static Moment moment(Element element) {
        var base = element.value().base();
        int shape = base.ordinal() % 4;
        boolean smaller = base.ordinal() >= 4;
        return new Moment(
                shape,
                smaller,
                element.value().dots(),
                element instanceof Chord chord
                        ? chord.heads().stream()
                                .sorted(Comparator.comparing(
                                                (Head head) -> head.pitch().diatonicIndex())
                                        .thenComparing(head -> head.pitch().midi()))
                                .map(BrailleSheetTest::tone)
                                .toList()
                        : List.of());
    }

    /** A dead note stands at its string's place without a sign. */
    private static Tone tone(Head head) {
        var pitch = head.writtenPitch();
        return new Tone(
                pitch.diatonicIndex(),
                head.note().isDead() ? 0 : pitch.name().alteration(),
                head.note().string(),
                head.tiedTo());
    }

    private static List<List<List<Fraction>>> squeezed(WrittenLine line) {
        return line.bars().stream()
                .map(bar -> downward(bar).stream()
                        .map(voice -> voice.elements().stream()
                                .map(BrailleSheetTest::squeezed)
                                .toList())
                        .toList())
                .toList();
    }

    private static Fraction squeezed(Element element) {
        boolean wholeBar = element instanceof Rest rest && rest.wholeBar();
        return wholeBar
                ? Fraction.ONE
                : element.length().dividedBy(element.value().length());
    }

    @Test
    void aReaderFindsPitchesValuesTiesAndStrings() throws IOException {
        int notes = 0;
        for (var named : lines().entrySet()) {
            var line = named.getValue();
            var written = Writing.of(line);
            var reader = new BrailleReader(
                    line.header().key().fifths(), line.header().meter().length());
            var read = read(named.getKey(), reader, music(rows(line)), squeezed(written));
            assertThat(read.size()).as(named.getKey()).isEqualTo(written.bars().size());
            for (int i = 0; i < read.size(); i++) {
                var voices = new ArrayList<List<Moment>>();
                for (int v = 0; v < read.get(i).voices().size(); v++) {
                    voices.add(withoutSignsOfTheDead(
                            read.get(i).voices().get(v),
                            downward(written.bars().get(i)).get(v)));
                }
                assertThat(voices)
                        .as(named.getKey() + ", bar index " + i)
                        .isEqualTo(expected(written.bars().get(i)));
                notes += line.bars().get(i).notes().size();
            }
        }
        assertThat(notes).isGreaterThan(1000);
    }

    private static List<BrailleReader.ReadBar> read(
            String name, BrailleReader reader, List<String> rows, List<List<List<Fraction>>> squeezed) {
        try {
            return reader.read(rows, squeezed);
        } catch (RuntimeException unreadable) {
            throw new AssertionError(name + ":\n" + String.join("\n", rows), unreadable);
        }
    }

    /** A dead note has no pitch: what the key would make of its place is not asked. */
    private static List<Moment> withoutSignsOfTheDead(List<Moment> read, Voice voice) {
        var moments = new ArrayList<Moment>();
        for (int i = 0; i < read.size(); i++) {
            var moment = read.get(i);
            var heads = expectedHeads(voice.elements().get(i));
            var tones = new ArrayList<Tone>();
            for (int t = 0; t < moment.tones().size(); t++) {
                var tone = moment.tones().get(t);
                boolean dead = t < heads.size() && heads.get(t).note().isDead();
                tones.add(new Tone(tone.step(), dead ? 0 : tone.alteration(), tone.string(), tone.tied()));
            }
            moments.add(new Moment(moment.shape(), moment.smaller(), moment.dots(), tones));
        }
        return moments;
    }

    private static List<Head> expectedHeads(Element element) {
        return element instanceof Chord chord
                ? chord.heads().stream()
                        .sorted(Comparator.comparing((Head head) -> head.pitch().diatonicIndex())
                                .thenComparing(head -> head.pitch().midi()))
                        .toList()
                : List.of();
    }

    /** rule: braille-rows */
    @Test
    void noRowIsTooLongAndBothFilesSayTheSame() throws IOException {
        for (var named : lines().entrySet()) {
            var sheet = BrailleSheet.of(named.getValue(), ENGLISH);
            var brf = new String(sheet.brf(), StandardCharsets.US_ASCII);
            var unicode = new String(sheet.unicode(), StandardCharsets.UTF_8);
            assertThat(brf).as(named.getKey()).matches("(?s)[\\x20-\\x5f\\r\\n\\f]+");
            assertThat(unicode).as(named.getKey()).matches("(?s)[\\u2800-\\u283f\\r\\n]+");
            var rows = brf.replace("\f", "").split("\r\n", -1);
            assertThat(rows).as(named.getKey()).allMatch(row -> row.length() <= CELLS);
            assertThat(Stream.of(rows).map(row -> Cells.of(row).patterns()).toList())
                    .as(named.getKey())
                    .isEqualTo(List.of(unicode.split("\r\n", -1)));
            for (String page : brf.split("\f")) {
                assertThat(page.split("\r\n", -1).length - 1).isBetween(1, BrailleSheet.HEIGHT);
            }
        }
    }

    /** MBC 1997, 10.4. rule: braille-in-accord */
    @Test
    void noHyphenStandsBehindTheSignOfAnInAccord() throws IOException {
        var rows =
                lines().values().stream().flatMap(line -> rows(line).stream()).toList();
        assertThat(rows).anyMatch(row -> row.endsWith("<>")).noneMatch(row -> row.endsWith("<>\""));
    }

    /** Everything at once on as many strings as a neck can have, far up, with more words than anybody writes. */
    @Test
    void whatIsTooWideForARowIsPartedBetweenItsSigns() {
        var open = new String[Tuning.MOST_STRINGS];
        Arrays.fill(open, "Gb2");
        var ornaments = Ornaments.NONE
                .with(new Ornaments.Bend(7, true, true))
                .with(Ornaments.SlideIn.ABOVE)
                .with(Ornaments.SlideOff.UP)
                .withFinger(4);
        for (var mark : Ornaments.Mark.values()) {
            ornaments = ornaments.with(mark);
        }
        var techniques = Technique.values();
        var notes = new ArrayList<Note>();
        for (int string = 1; string <= open.length; string++) {
            notes.add(new Note(
                    Fraction.ZERO,
                    Fraction.of(1, 4),
                    Place.of(string, 12 + string),
                    Optional.of(techniques[string]),
                    Optional.of(Arrival.from(Arrival.Kind.SLIDE, 13 + string)),
                    ornaments));
        }
        var said = List.<Direction>of(
                new Direction.Loudness(Fraction.ZERO, Dynamic.FF),
                new Direction.Words(Fraction.ZERO, "one two"),
                new Direction.Words(Fraction.ZERO, "three four"),
                new Direction.Words(Fraction.ZERO, "five six"),
                new Direction.Words(Fraction.ZERO, "x".repeat(200)),
                new Direction.Words(Fraction.of(3, 4), "seven eight"),
                new Direction.Words(Fraction.of(3, 4), "nine ten"),
                new Direction.Words(Fraction.of(3, 4), "eleven"));
        var bar = Bar.of(Meter.COMMON, notes).withDirections(said);
        var line = new Line(Header.PLAIN.with(Tuning.sounding(open)).withFrets(36), List.of(bar, bar));
        var rows = rows(line);
        assertThat(rows).allMatch(row -> row.length() <= CELLS);
        assertThat(rows).anyMatch(row -> row.contains("STR#AB'"));
        assertThat(String.join("", rows)).contains(">ELEVEN");
    }

    /** What a line says is the same in every language but in its words. */
    @Test
    void theSameLineGivesTheSameMusicInGerman() throws IOException {
        var german = Messages.of(Locale.GERMAN);
        for (var named : lines().entrySet()) {
            if (!named.getKey().startsWith("seed ")) {
                var rows = BrailleSheet.of(named.getValue(), german).rows();
                assertThat(rows).as(named.getKey()).allMatch(row -> row.length() <= CELLS);
                var music = music(rows.stream().map(Cells::ascii).toList());
                assertThat(music).as(named.getKey()).isEqualTo(music(rows(named.getValue())));
            }
        }
    }
}
