package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.musicxml.ReadScore.Head;
import groundbass.musicxml.ReadScore.Sound;
import groundbass.performance.Performance;
import groundbass.score.Changes;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Passes.Played;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Technique;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.ShortMessage;
import org.audiveris.proxymusic.AccidentalValue;
import org.audiveris.proxymusic.StartStop;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Documents read back by a library that binds the format to classes: what sounds, when, how long, where, how spelled. */
class ReadBackTest {
    private static final int LINES = SchemaTest.LINES;
    private static final int TICKS = 4 * 480;

    private static final Map<AccidentalValue, Integer> SIGNS = Map.of(
            AccidentalValue.FLAT_FLAT, -2,
            AccidentalValue.FLAT, -1,
            AccidentalValue.NATURAL, 0,
            AccidentalValue.SHARP, 1,
            AccidentalValue.DOUBLE_SHARP, 2);

    private static List<Line> lines() throws IOException {
        var lines = new ArrayList<Line>();
        for (Path file : SchemaTest.demo()) {
            lines.add(SchemaTest.line(file));
        }
        for (long seed = 1; seed <= LINES; seed++) {
            lines.add(RandomLines.line(seed));
        }
        return lines;
    }

    private static ReadScore read(Line line) {
        return ReadScore.of(MusicXmlFile.of(line));
    }

    /** Everything that the line says of its notes, from the line alone. */
    private static List<Sound> sounds(Line line) {
        var tuning = line.header().tuning();
        var sounds = new ArrayList<Sound>();
        var start = Fraction.ZERO;
        for (var bar : line.bars()) {
            for (var note : bar.notes()) {
                int pitch = note.midi(tuning)
                        .orElse(tuning.string(note.string()).pitch().midi());
                int fret = note.place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
                sounds.add(new Sound(
                        start.plus(note.onset()).minus(bar.from()),
                        note.length(),
                        pitch,
                        note.string(),
                        fret,
                        note.isDead()));
            }
            start = start.plus(bar.length());
        }
        return sounds.stream().sorted(Sound.ORDER).toList();
    }

    @Test
    void pitchesOnsetsLengthsAndPlacesAreThoseOfTheLine() throws IOException {
        int notes = 0;
        int n = 0;
        for (var line : lines()) {
            var expected = sounds(line);
            assertThat(read(line).sounds()).as("line " + n++).isEqualTo(expected);
            notes += expected.size();
        }
        assertThat(notes).isGreaterThan(1_000);
    }

    @Test
    void bothStavesSayTheSame() throws IOException {
        int heads = 0;
        for (var line : lines()) {
            for (var bar : read(line).bars()) {
                assertThat(bar.on(1).map(ReadBackTest::withoutPlace))
                        .containsExactlyElementsOf(
                                bar.on(2).map(ReadBackTest::withoutPlace).toList());
                heads += (int) bar.on(1).count();
            }
        }
        assertThat(heads).isGreaterThan(1_000);
    }

    private static List<Object> withoutPlace(Head head) {
        return List.of(
                head.onset(),
                head.length(),
                head.sounding(),
                head.isGrace(),
                head.shape(),
                head.note().getType().getValue(),
                head.note().getDot().size(),
                head.note().getTie().stream().map(tie -> tie.getType()).toList());
    }

    @Test
    void aFretOnItsStringGivesThePitch() throws IOException {
        int checked = 0;
        for (var line : lines()) {
            var score = read(line);
            for (var head : score.bars().stream().flatMap(bar -> bar.on(2)).toList()) {
                if (head.technical("harmonic") == null && !head.ties(StartStop.STOP)) {
                    int open = score.open().get(head.string().orElseThrow());
                    assertThat(head.sounding()).isEqualTo(open + head.fret().orElseThrow());
                    checked++;
                }
            }
        }
        assertThat(checked).isGreaterThan(1_000);
    }

    /** A player reads line or space, signature, the signs of the bar, and ties (rule: accidental-for-its-bar). */
    @Test
    void theSignsBeforeHeadsSpellWhatSounds() throws IOException {
        int signs = 0;
        for (var line : lines()) {
            for (var bar : read(line).bars()) {
                var inBar = new HashMap<String, Integer>();
                var inTime = bar.on(1)
                        .filter(head -> !head.shape().equals("x"))
                        .sorted((a, b) -> a.onset().compareTo(b.onset()) != 0
                                ? a.onset().compareTo(b.onset())
                                : Boolean.compare(b.isGrace(), a.isGrace()))
                        .toList();
                for (var head : inTime) {
                    if (!head.note().getTie().isEmpty() && head.ties(StartStop.STOP)) {
                        continue;
                    }
                    var pitch = head.note().getPitch();
                    String place = pitch.getStep().value() + pitch.getOctave();
                    var sign = Optional.ofNullable(head.note().getAccidental());
                    sign.ifPresent(each -> inBar.put(place, SIGNS.get(each.getValue())));
                    signs += sign.isPresent() ? 1 : 0;
                    int read = inBar.getOrDefault(
                            place, bySignature(pitch.getStep().value(), bar.fifths()));
                    int said = pitch.getAlter() == null ? 0 : pitch.getAlter().intValueExact();
                    assertThat(said).as(place).isEqualTo(read);
                }
            }
        }
        assertThat(signs).isGreaterThan(100);
    }

    private static int bySignature(String step, int fifths) {
        int place = "FCGDAEB".indexOf(step);
        return fifths > place ? 1 : -fifths > 6 - place ? -1 : 0;
    }

    @Test
    void barsAreLongAndNumberedAsTheyAre() throws IOException {
        for (var line : lines()) {
            var bars = read(line).bars();
            assertThat(bars.stream().map(ReadScore.Bar::length))
                    .containsExactlyElementsOf(
                            line.bars().stream().map(bar -> bar.length()).toList());
            assertThat(bars.get(0).measure().getNumber()).isEqualTo(String.valueOf(line.firstNumber()));
        }
    }

    @Test
    void repeatsEndingsAndJumpsLeadTheSameWay() throws IOException {
        int longer = 0;
        int n = 0;
        for (var line : lines()) {
            var expected = line.played().stream().map(Played::bar).toList();
            assertThat(Unfolded.of(read(line).bars())).as("line " + n++).isEqualTo(expected);
            longer += expected.size() > line.bars().size() ? 1 : 0;
        }
        assertThat(longer).isGreaterThan(20);
    }

    /** Swing, rolled chords, trills and grace notes move the moments of a performance, and are left out of both. */
    @Test
    void theMidiFileOfTheLineStrikesTheSameKeysAtTheSameMoments() throws Exception {
        int struck = 0;
        int n = 0;
        for (var any : lines()) {
            var line = plain(any);
            var expected = midi(line);
            assertThat(played(line)).as("line " + n++).isEqualTo(expected);
            struck += expected.size();
        }
        assertThat(struck).isGreaterThan(1_000);
    }

    private static Line plain(Line line) {
        var bars = line.bars().stream()
                .map(bar -> bar.withNotes(
                                bar.notes().stream().map(ReadBackTest::plain).toList())
                        .with(straight(bar.changes())))
                .map(bar -> bar.writtenOut())
                .toList();
        return new Line(line.header().with(Feel.STRAIGHT), bars);
    }

    private static Changes straight(Changes changes) {
        return changes.feel().isPresent() ? changes.with(Feel.STRAIGHT) : changes;
    }

    private static Note plain(Note note) {
        var pluck =
                note.pluck().map(hand -> hand == Technique.RAKE || hand == Technique.PLUCK ? Technique.FINGER : hand);
        var arrival = note.arrival().filter(each -> !each.isGrace());
        return new Note(
                note.onset(),
                note.length(),
                note.place(),
                pluck,
                arrival,
                note.ornaments().withoutTrill().withSpread(Optional.empty()));
    }

    private static List<String> midi(Line line) throws Exception {
        var file = MidiFile.of(Performance.of(line));
        var track = MidiSystem.getSequence(new ByteArrayInputStream(file)).getTracks()[1];
        return IntStream.range(0, track.size())
                .mapToObj(track::get)
                .filter(event -> event.getMessage() instanceof ShortMessage message
                        && message.getCommand() == ShortMessage.NOTE_ON)
                .map(event -> said(event.getTick(), ((ShortMessage) event.getMessage()).getData1()))
                .sorted()
                .toList();
    }

    private static List<String> played(Line line) {
        var bars = read(line).bars();
        var start = Performance.of(line).bars().get(0).start();
        var keys = new ArrayList<String>();
        for (int index : Unfolded.of(bars)) {
            for (var head : bars.get(index).on(1).toList()) {
                if (!head.ties(StartStop.STOP)) {
                    var tick = start.plus(head.onset()).times(TICKS);
                    keys.add(said(Math.round(tick.toDouble()), Math.max(0, Math.min(127, head.sounding()))));
                }
            }
            start = start.plus(bars.get(index).length());
        }
        return keys.stream().sorted().toList();
    }

    private static String said(long tick, int key) {
        return tick + " " + key;
    }

    private static final Line LITTLE = LineText.read("little.line", """
            key     C major
            strings B E A D G

            bar 1
            1  B3, E0
            2  A5 + D7
            3  E3, E5, E7, E8
            4  A2
            """).line();

    /** So that the checks above are known to look. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "<octave>2</octave>|<octave>3</octave>",
                "<duration>1</duration>|<duration>2</duration>",
                "<string>5</string>|<string>4</string>",
                "<fret>3</fret>|<fret>4</fret>",
                "<step>E</step>|<step>F</step>",
                "<octave-change>-1</octave-change>|<octave-change>0</octave-change>",
                "<chord/>|''",
                "<divisions>4</divisions>|<divisions>8</divisions>",
                "<tuning-octave>0</tuning-octave>|<tuning-octave>1</tuning-octave>",
            })
    void whatIsChangedIsNoticed(String said, String instead) {
        var document = new String(MusicXmlFile.of(LITTLE), StandardCharsets.UTF_8);
        assertThat(isRight(LITTLE, document)).isTrue();
        assertThat(document).contains(said);
        int last = document.lastIndexOf(said);
        var spoiled = document.substring(0, last) + instead + document.substring(last + said.length());
        assertThat(isRight(LITTLE, spoiled)).isFalse();
    }

    private static boolean isRight(Line line, String document) {
        try {
            var score = ReadScore.of(document.getBytes(StandardCharsets.UTF_8));
            boolean frets = score.sounds().stream()
                    .allMatch(sound -> score.open().get(sound.string()) + sound.fret() == sound.pitch());
            boolean lengths = Stream.iterate(0, i -> i + 1)
                    .limit(line.bars().size())
                    .allMatch(i -> score.bars()
                            .get(i)
                            .length()
                            .equals(line.bars().get(i).length()));
            return frets && lengths && score.sounds().equals(sounds(line));
        } catch (AssertionError impossible) {
            return false;
        }
    }
}
