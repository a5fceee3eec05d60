package groundbass.intake;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.intake.Intake.Refused;
import groundbass.intake.Intake.Unclear;
import groundbass.intake.notice.Notice;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.performance.Performance;
import groundbass.score.Bar;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.text.Messages;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.TreeSet;
import javax.sound.midi.InvalidMidiDataException;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import javax.sound.midi.Track;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What was played becomes what can be written; the files are made and read by the JDK as a second opinion. */
class MidiInTest {
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);
    private static final int LINES = Integer.getInteger("intake.lines", 200);

    /** A moment in whole notes from the first bar, and a key. */
    private record Struck(Fraction at, int key) {
        static final Comparator<Struck> ORDER = Comparator.comparing(Struck::at).thenComparingInt(Struck::key);
    }

    private static Brought brought(byte[] file) {
        var outcome = Intake.read(file, Optional.empty());
        assertThat(outcome).isInstanceOf(Brought.class);
        return (Brought) outcome;
    }

    private static List<Struck> struck(Line line) {
        var all = new ArrayList<Struck>();
        var start = Fraction.ZERO;
        for (var bar : line.bars()) {
            for (var note : bar.notes()) {
                int key = note.midi(line.header().tuning()).orElse(-1);
                all.add(new Struck(start.plus(note.onset()).minus(bar.from()), key));
            }
            start = start.plus(bar.length());
        }
        return all.stream().sorted(Struck.ORDER).toList();
    }

    /** What is written, repeats taken, each sound once: a key cannot be struck twice at one moment. */
    private static List<Struck> written(Line line) {
        var tuning = line.header().tuning();
        var all = new TreeSet<>(Struck.ORDER);
        var start = Fraction.ZERO;
        for (var played : line.played()) {
            var bar = line.bars().get(played.bar());
            for (var note : bar.notes()) {
                int key = note.midi(tuning)
                        .orElse(tuning.string(note.string()).pitch().midi());
                all.add(new Struck(start.plus(note.onset()).minus(bar.from()), key));
            }
            start = start.plus(bar.length());
        }
        return List.copyOf(all);
    }

    private static void sameRhythm(Line line, String name) {
        var written = written(line);
        if (written.isEmpty()) {
            return;
        }
        var back = struck(brought(MidiFile.of(Performance.of(line))).line());
        // what begins in silence is brought in from its first bar on
        var silence = written.get(0).at().minus(back.get(0).at());
        assertThat(back.stream().map(each -> new Struck(each.at().plus(silence), each.key())))
                .as(name)
                .containsExactlyElementsOf(written);
    }

    static List<Path> demo() throws IOException {
        return MusicXmlRoundTripTest.demo();
    }

    @ParameterizedTest
    @MethodSource("demo")
    void theDemoComesBackAsItIsPlayed(Path file) throws IOException {
        sameRhythm(LineText.read(Files.readString(file)).line(), file.toString());
    }

    /** One voice, each beat in so many parts, some of them silent, notes up to the next or shorter. */
    private static Line randomLine(long seed) {
        var random = new Random(seed);
        var meters =
                List.of(Meter.COMMON, Meter.of(3, 4), Meter.of(5, 4), Meter.of(6, 8), Meter.of(12, 8), Meter.of(7, 8));
        var meter = meters.get(random.nextInt(meters.size()));
        var bars = new ArrayList<Bar>();
        for (int bar = 0; bar < 1 + random.nextInt(8); bar++) {
            var notes = new ArrayList<Note>();
            for (var beat : meter.beatStarts()) {
                int parts = List.of(1, 2, 3, 4, 6, 5, 8).get(random.nextInt(7));
                var part = meter.beatEnd(beat).minus(beat).dividedBy(parts);
                for (int i = 0; i < parts; i++) {
                    if (random.nextInt(4) > 0) {
                        var place = Place.of(1 + random.nextInt(4), random.nextInt(15));
                        notes.add(Note.plucked(beat.plus(part.times(i)), part, place, Technique.FINGER));
                    }
                }
            }
            bars.add(Bar.of(meter, notes));
        }
        return new Line(Header.PLAIN.with(meter), bars);
    }

    @Test
    void randomLinesComeBackAsTheyArePlayed() {
        for (long seed = 1; seed <= LINES; seed++) {
            sameRhythm(randomLine(seed), "seed " + seed);
        }
    }

    /** Strokes a few ticks early or late, 96 ticks to a quarter. */
    private static byte[] file(int format, String name, long[]... strokes) {
        try {
            var sequence = new Sequence(Sequence.PPQ, 96);
            var track = sequence.createTrack();
            track.add(new MidiEvent(new MetaMessage(0x03, name.getBytes(StandardCharsets.US_ASCII), name.length()), 0));
            for (long[] stroke : strokes) {
                strike(track, stroke);
            }
            return written(sequence, format);
        } catch (InvalidMidiDataException | IOException e) {
            throw new AssertionError(e);
        }
    }

    private static void strike(Track track, long[] stroke) throws InvalidMidiDataException {
        track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, 0, (int) stroke[2], 90), stroke[0]));
        track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_OFF, 0, (int) stroke[2], 0), stroke[1]));
    }

    private static byte[] written(Sequence sequence, int format) throws IOException {
        var bytes = new ByteArrayOutputStream();
        MidiSystem.write(sequence, format, bytes);
        return bytes.toByteArray();
    }

    private static long[] stroke(long on, long off, int key) {
        return new long[] {on, off, key};
    }

    @Test
    void aPlayedRhythmIsMovedToTheNearestThatCanBeWritten() {
        var brought = brought(
                file(0, "", stroke(3, 80, 33), stroke(94, 120, 33), stroke(146, 180, 36), stroke(194, 370, 40)));
        assertThat(struck(brought.line()))
                .extracting(each -> each.at().toString())
                .containsExactly("0", "1/4", "3/8", "1/2");
        assertThat(brought.line().bar(1).notes())
                .extracting(note -> note.length().toString())
                .containsExactly("1/4", "1/8", "1/8", "1/2");
        assertThat(told(brought)).anyMatch(each -> each.startsWith("Guessed, bar 1: the rhythm"));
    }

    @Test
    void tripletsAreFoundBeatByBeat() {
        var brought = brought(file(
                0,
                "",
                stroke(1, 30, 33),
                stroke(33, 60, 36),
                stroke(66, 95, 40),
                stroke(97, 140, 33),
                stroke(143, 190, 36)));
        assertThat(struck(brought.line()))
                .extracting(each -> each.at().toString())
                .containsExactly("0", "1/12", "1/6", "1/4", "3/8");
    }

    @Test
    void overlapsAreBoundAndChordsStay() {
        var brought = brought(
                file(0, "", stroke(0, 100, 33), stroke(96, 200, 36), stroke(192, 384, 33), stroke(192, 384, 40)));
        assertThat(brought.line().bar(1).notes())
                .extracting(note -> note.length().toString())
                .containsExactly("1/4", "1/4", "1/2", "1/2");
    }

    private static List<String> told(Brought brought) {
        return brought.notices().stream()
                .map(Notice::sentence)
                .map(ENGLISH::say)
                .toList();
    }

    @Test
    void tracksAreAskedForWhereNoneIsTheBass() throws Exception {
        var sequence = new Sequence(Sequence.PPQ, 96);
        for (int i = 0; i < 2; i++) {
            var track = sequence.createTrack();
            track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_ON, i, 40 + i, 90), 0));
            track.add(new MidiEvent(new ShortMessage(ShortMessage.NOTE_OFF, i, 40 + i, 0), 96));
        }
        var bytes = new ByteArrayOutputStream();
        MidiSystem.write(sequence, 1, bytes);
        assertThat(Intake.read(bytes.toByteArray(), Optional.empty()))
                .isInstanceOfSatisfying(
                        Unclear.class, unclear -> assertThat(unclear.parts()).hasSize(2));
        var second = (Brought) Intake.read(bytes.toByteArray(), Optional.of(2));
        assertThat(struck(second.line())).extracting(Struck::key).containsExactly(41);
    }

    @Test
    void pairsThatSwingAreWrittenStraight() {
        var line = LineText.read("feel swing 8ths 3:2\nbar 1\n1-4 E0, E1, E2, E3, E0, E1, E2, E3\n")
                .line();
        var brought = brought(MidiFile.of(Performance.of(line)));
        assertThat(brought.line().header().feel()).isEqualTo(line.header().feel());
        sameRhythm(line, "swung");
        assertThat(told(brought)).anyMatch(each -> each.startsWith("Guessed: pairs of eighths swing"));
    }

    @Test
    void aTripletAmongThemIsNoSwing() {
        var brought = brought(MidiFile.of(
                Performance.of(LineText.read("bar 1\n1 E0 for 2, E1\n2 E0, E1, E2\n3 E0 for 2, E1\n4 E0 for 2, E1\n")
                        .line())));
        assertThat(brought.line().header().feel()).isEqualTo(Feel.STRAIGHT);
    }

    /** MMA RP-001: a header of six bytes, chunks with their length; formats 0, 1 and 2; frames instead of quarters. */
    @Test
    void whatCannotBeReadIsTold() {
        byte[] good = file(0, "", stroke(0, 96, 33));
        assertThat(why(changed(good, 9, 2))).isEqualTo("intake.refused.midi.format");
        assertThat(why(changed(good, 12, 0xE7))).isEqualTo("intake.refused.midi.frames");
        assertThat(why(Arrays.copyOf(good, good.length - 3))).isEqualTo("intake.refused.midi");
        assertThat(why(Arrays.copyOf(good, 10))).isEqualTo("intake.refused.midi");
        assertThat(why(file(0, ""))).isEqualTo("intake.refused.empty");
    }

    private static byte[] changed(byte[] file, int at, int value) {
        byte[] other = file.clone();
        other[at] = (byte) value;
        return other;
    }

    private static String why(byte[] file) {
        return ((Refused) Intake.read(file, Optional.empty())).why().key();
    }

    /** Sixty-fourths, 96 ticks to a quarter: four of them before a long note are played as they stand. */
    @Test
    void aFastRunIsNotesAndNoGraces() {
        var brought = brought(file(
                1,
                "",
                stroke(0, 6, 33),
                stroke(6, 12, 35),
                stroke(12, 18, 36),
                stroke(18, 24, 38),
                stroke(24, 96, 40),
                stroke(96, 192, 33)));
        assertThat(struck(brought.line()))
                .extracting(each -> each.at() + " " + each.key())
                .containsExactly("0 33", "1/64 35", "1/32 36", "3/64 38", "1/16 40", "1/4 33");
        assertThat(brought.line().bar(1).notes())
                .allMatch(note -> note.ornaments().slideIn().isEmpty());
    }

    @Test
    void aStrokeThatRunsIntoALongNoteIsItsGraceAndASecondOneIsTold() {
        var one = brought(file(1, "", stroke(0, 90, 33), stroke(90, 96, 35), stroke(96, 192, 36)));
        assertThat(struck(one.line())).extracting(Struck::key).containsExactly(33, 36);
        assertThat(told(one)).noneMatch(each -> each.contains("grace"));
        var two = brought(file(1, "", stroke(0, 84, 33), stroke(84, 90, 38), stroke(90, 96, 35), stroke(96, 192, 36)));
        assertThat(struck(two.line())).extracting(Struck::key).containsExactly(33, 36);
        assertThat(told(two)).contains("Left out, bar 1: a grace note");
    }

    /** A bar of four quarters ends at tick 384; the stroke is two ticks early, and short. */
    @Test
    void aLastStrokeJustBeforeTheBarLineStandsBehindIt() {
        var brought = brought(file(1, "", stroke(0, 190, 33), stroke(192, 370, 36), stroke(382, 400, 40)));
        assertThat(struck(brought.line()))
                .extracting(each -> each.at() + " " + each.key())
                .containsExactly("0 33", "1/2 36", "1 40");
        assertThat(brought.line().bars()).hasSize(2);
    }

    /** Two bars of quarters, and meta events (MMA RP-001): a tick, a kind, and its bytes. */
    private static byte[] withMeta(long[]... events) {
        try {
            var sequence = new Sequence(Sequence.PPQ, 96);
            var track = sequence.createTrack();
            for (long[] event : events) {
                byte[] data = new byte[event.length - 2];
                for (int i = 0; i < data.length; i++) {
                    data[i] = (byte) event[i + 2];
                }
                track.add(new MidiEvent(new MetaMessage((int) event[1], data, data.length), event[0]));
            }
            for (int quarter = 0; quarter < 8; quarter++) {
                strike(track, stroke(quarter * 96L, quarter * 96L + 90, 33));
            }
            strike(track, stroke(500, 500, 40));
            return written(sequence, 1);
        } catch (InvalidMidiDataException | IOException e) {
            throw new AssertionError(e);
        }
    }

    private static long[] meta(long tick, int kind, int... bytes) {
        var event = new long[bytes.length + 2];
        event[0] = tick;
        event[1] = kind;
        for (int i = 0; i < bytes.length; i++) {
            event[i + 2] = bytes[i];
        }
        return event;
    }

    private static long[] words(long tick, String words) {
        return meta(tick, 0x06, words.chars().toArray());
    }

    @Test
    void aNoteWithoutLengthIsTold() {
        assertThat(told(brought(withMeta()))).contains("Left out, bar 2: a note without length");
    }

    /** 0x58: the power of two of the lower figure; a line has none above 16. */
    @Test
    void aSignatureThatALineCannotHaveIsTold() {
        var brought = brought(withMeta(meta(384, 0x58, 4, 5, 24, 8)));
        assertThat(told(brought))
                .contains("Changed, bar 2: a line has no such time signature; the bars stand in common time");
        assertThat(brought.line().bars()).hasSize(2);
    }

    /** 0x59: sharps, or flats below zero, and whether it is minor. */
    @Test
    void keysInsideABarAndOfNoKindAreTold() {
        var brought = brought(withMeta(meta(0, 0x59, 1, 0), meta(480, 0x59, 2, 0)));
        assertThat(brought.line().header().key().toString()).isEqualTo("G major");
        assertThat(brought.line().inForce().get(1).key().toString()).isEqualTo("D major");
        assertThat(told(brought))
                .contains(
                        "Changed, bar 2: a line changes its key at bar lines only; this change holds for the whole bar");
        assertThat(told(brought(withMeta(meta(0, 0x59, 1, 0), meta(384, 0x59, 9, 0)))))
                .contains("Left out, bar 2: a key signature of its own kind");
    }

    /** 0x51: microseconds of a quarter: 600,000 are 100 a minute, 500,000 120, 100,000 600, which no line has. */
    @Test
    void temposInsideABarAndBeyondALineAreTold() {
        var inside = brought(withMeta(meta(0, 0x51, 0x09, 0x27, 0xC0), meta(96, 0x51, 0x07, 0xA1, 0x20)));
        assertThat(inside.line().header().tempo().perMinute()).isEqualTo(100);
        assertThat(inside.line().inForce().get(1).tempo().perMinute()).isEqualTo(120);
        assertThat(told(inside))
                .contains("Changed, bar 1: the tempo changes inside the bar; a line changes it at the next one");
        assertThat(told(brought(withMeta(meta(384, 0x51, 0x01, 0x86, 0xA0)))))
                .contains("Left out, bar 2: a tempo that no line has");
        assertThat(told(brought(withMeta(meta(0, 0x51, 0x09, 0x27, 0xC0), meta(96, 0x51, 0x09, 0x27, 0xC1)))))
                .as("a microsecond more is the same tempo")
                .noneMatch(each -> each.contains("tempo"));
    }

    /** 0x06 is a marker. */
    @Test
    void markersBesideTheBarLineAreKeptOrTold() {
        var brought =
                brought(withMeta(words(3, "Head"), words(290, "Bridge"), words(384, "Verse"), words(5000, "Coda")));
        assertThat(brought.line().bar(1).changes().section()).contains("Head");
        assertThat(brought.line().bar(2).changes().section()).contains("Bridge");
        assertThat(told(brought))
                .contains("Changed, bar 2: “Bridge” stands inside a bar; in the line it stands at the nearest bar line")
                .contains("Left out, bar 2: “Verse”")
                .contains("Left out: “Coda”")
                .noneMatch(each -> each.contains("Head"));
    }

    /** MMA RP-001: the name of the one track of format 0 is that of the whole; its parts are known by their channels. */
    @Test
    void theNameOfFormatZeroIsTheTitle() {
        var brought = brought(file(0, "Slack Water", stroke(0, 96, 33)));
        assertThat(brought.line().header().title()).isEqualTo("Slack Water");
        assertThat(brought.part().name()).isEmpty();
        assertThat(ENGLISH.say(brought.part().choice())).isEqualTo("1: channel 1 (one note)");
        assertThat(Messages.of(Locale.GERMAN).say(brought.part().choice())).isEqualTo("1: Kanal 1 (ein Ton)");
    }
}
