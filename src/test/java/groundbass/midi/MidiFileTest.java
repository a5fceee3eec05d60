package groundbass.midi;

import static groundbass.performance.Lines.bar;
import static groundbass.performance.Lines.by;
import static groundbass.performance.Lines.even;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.pickup;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.groove.Band;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Arrival;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Feel;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.RandomLines;
import groundbass.score.Repeats;
import groundbass.score.Roadmap;
import groundbass.score.Swing;
import groundbass.score.Technique;
import groundbass.theory.ChordSymbol;
import java.io.ByteArrayInputStream;
import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import javax.sound.midi.MetaMessage;
import javax.sound.midi.MidiEvent;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import javax.sound.midi.ShortMessage;
import org.junit.jupiter.api.Test;

/** Files read back by the JDK's own MIDI classes; values worked out by hand from MIDI 1.0 and the rules named. */
class MidiFileTest {
    private static final int BASS = 1;
    private static final int DRUMS = 2;
    private static final int CHORDS = 3;
    private static final int CLICK = 4;

    /** A note-on: when, which key, how loud. */
    record On(long tick, int key, int velocity) {}

    private static Sequence read(Line line) {
        return read(MidiFile.of(Performance.of(line)));
    }

    private static Sequence read(byte[] file) {
        try {
            return MidiSystem.getSequence(new ByteArrayInputStream(file));
        } catch (Exception broken) {
            throw new AssertionError(broken);
        }
    }

    private static Stream<MidiEvent> events(Sequence sequence, int track) {
        var events = sequence.getTracks()[track];
        return IntStream.range(0, events.size()).mapToObj(events::get);
    }

    private static List<On> ons(Sequence sequence, int track) {
        return channel(sequence, track, ShortMessage.NOTE_ON).stream()
                .map(event -> new On(
                        event.getTick(), data(event).getData1(), data(event).getData2()))
                .toList();
    }

    private static List<MidiEvent> channel(Sequence sequence, int track, int command) {
        return events(sequence, track)
                .filter(event -> event.getMessage() instanceof ShortMessage message && message.getCommand() == command)
                .toList();
    }

    private static ShortMessage data(MidiEvent event) {
        return (ShortMessage) event.getMessage();
    }

    private static List<String> texts(Sequence sequence, int track, int type) {
        return events(sequence, track)
                .filter(event -> event.getMessage() instanceof MetaMessage meta && meta.getType() == type)
                .map(event -> event.getTick() + " "
                        + new String(((MetaMessage) event.getMessage()).getData(), StandardCharsets.UTF_8))
                .toList();
    }

    @Test
    void theTracksAreNamed() {
        var sequence = read(line(Header.PLAIN.withTitle("Plain line"), even(4)));
        assertThat(sequence.getResolution()).isEqualTo(480);
        assertThat(IntStream.range(0, 5)
                        .mapToObj(track -> texts(sequence, track, 3).get(0)))
                .containsExactly("0 Plain line", "0 Bass", "0 Drums", "0 Chords", "0 Click");
    }

    @Test
    void theFirstBarBeginsAfterOneBarOfWoodBlock() {
        // rule: count-in: 84 on beat 1, 79 on the others, velocities 100 and 80
        var sequence = read(line(quarters(120), even(4)));
        assertThat(ons(sequence, CLICK))
                .startsWith(new On(0, 84, 100), new On(480, 79, 80), new On(960, 79, 80), new On(1440, 79, 80));
        assertThat(ons(sequence, BASS).get(0).tick()).isEqualTo(1920);
        assertThat(texts(sequence, 0, 6)).containsExactly("0 Count-in", "1920 Start");
        // two bars of 4/4 at 120: 4 s
        assertThat(sequence.getMicrosecondLength()).isEqualTo(4_000_000);
    }

    @Test
    void eighthsAreHeldForNineTenths() {
        // rule: gate-length: an eighth of 240 ticks sounds 216
        var sequence = read(line(quarters(120), even(8)));
        assertThat(channel(sequence, BASS, ShortMessage.NOTE_OFF))
                .extracting(MidiEvent::getTick)
                .startsWith(1920L + 216, 2160L + 216);
    }

    @Test
    void swingIsPlayed() {
        // rule: swing-offbeat: tick 320 of 480
        var header = Header.PLAIN.with(Feel.swung(new Swing(f(1, 8), 2, 1)));
        assertThat(ons(read(line(header, even(8))), BASS)).extracting(On::tick).startsWith(1920L, 2240L, 2400L, 2720L);
    }

    @Test
    void techniquesHaveTheirPrograms() {
        // General MIDI 1 (RP-003), programs from zero: Slap Bass 1 is 36, finger 33, pick 34
        var quarter = f(1, 4);
        var sequence = read(line(
                Header.PLAIN,
                bar(
                        note(f(0, 1), quarter, Place.of(4, 5), Technique.FINGER),
                        note(f(1, 4), quarter, Place.of(4, 5), Technique.SLAP),
                        note(f(1, 2), quarter, Place.dead(4), Technique.FINGER),
                        note(f(3, 4), quarter, Place.of(4, 5), Technique.PICK))));
        assertThat(channel(sequence, BASS, ShortMessage.PROGRAM_CHANGE))
                .extracting(event -> event.getTick() + " " + data(event).getData1())
                .containsExactly("0 33", "2400 36", "3360 34");
    }

    @Test
    void aDeadNoteIsTheSoftShortOpenString() {
        // 60 ms at 120 are 57.6 ticks
        var sequence = read(line(quarters(120), bar(note(f(0, 1), f(1, 4), Place.dead(4), Technique.SLAP))));
        assertThat(ons(sequence, BASS)).hasSize(1).allMatch(on -> on.key() == 28 && on.velocity() <= 45);
        assertThat(channel(sequence, BASS, ShortMessage.NOTE_OFF).get(0).getTick())
                .isEqualTo(1920 + 58);
    }

    @Test
    void aSlideBendsUpToTheNextNoteAndBack() {
        var sequence =
                read(line(quarters(60), bar(note(f(0, 1), f(1, 4), 5), by(Arrival.Kind.SLIDE, f(1, 4), f(1, 4), 8))));
        var bends = channel(sequence, BASS, ShortMessage.PITCH_BEND).stream()
                .map(event -> data(event).getData1() + 128 * data(event).getData2())
                .toList();
        // rule: slide-by-frets. Fret by fret, a semitone of twelve is 8192 / 12; the centre at the next note
        assertThat(bends).endsWith(8192);
        assertThat(bends.get(bends.size() - 2)).isBetween(8192 + 1300, 8192 + 2048);
        assertThat(bends.subList(0, bends.size() - 1)).isSorted();
    }

    @Test
    void aBendMovesItsStringAlone() {
        // one string to a channel, as guitar controllers do (rule: string-per-channel)
        var bent = note(f(0, 1), f(1, 2), Place.of(1, 5), Technique.FINGER)
                .withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2)));
        var other = note(f(1, 4), f(1, 4), Place.of(4, 5), Technique.FINGER);
        var sequence = read(line(Header.PLAIN, bar(bent, other)));
        var bends = channel(sequence, BASS, ShortMessage.PITCH_BEND);
        assertThat(bends).isNotEmpty().allMatch(event -> data(event).getChannel() == 1);
        // MPE (MMA RP-053, from memory): registered parameter 6 on the first channel says how many follow
        assertThat(channel(sequence, BASS, ShortMessage.CONTROL_CHANGE).stream()
                        .filter(event -> data(event).getChannel() == 0)
                        .map(event -> data(event).getData1() + "=" + data(event).getData2()))
                .startsWith("101=0", "100=6", "6=4");
        assertThat(channel(sequence, BASS, ShortMessage.NOTE_ON))
                .extracting(event -> data(event).getChannel())
                .doesNotHaveDuplicates();
        // no string shares a channel with the chords or the drums
        assertThat(channel(sequence, BASS, ShortMessage.PROGRAM_CHANGE))
                .extracting(event -> data(event).getChannel())
                .containsExactlyInAnyOrder(1, 2, 3, 4);
    }

    @Test
    void aUnisonOnTwoStringsStaysTwoNotes() {
        // rule: string-per-channel. A0 and E5 are the same A1; on one channel the first end would end both
        var held = note(f(0, 1), f(1, 1), Place.of(4, 5), Technique.FINGER);
        var open = note(f(1, 4), f(1, 4), Place.of(3, 0), Technique.FINGER);
        var ons = channel(read(line(Header.PLAIN, bar(held, open))), BASS, ShortMessage.NOTE_ON);
        assertThat(ons).extracting(event -> data(event).getData1()).containsExactly(33, 33);
        assertThat(ons).extracting(event -> data(event).getChannel()).doesNotHaveDuplicates();
    }

    @Test
    void theClickIsMutedByItsChannelAndInstrumentsAreSet() {
        var sequence = read(line(Header.PLAIN, even(4)));
        assertThat(channel(sequence, CLICK, ShortMessage.NOTE_ON))
                .isNotEmpty()
                .allMatch(event -> data(event).getChannel() == 15);
        // MIDI 1.0: controllers 0 and 32 choose a bank, 7 is volume, 10 is pan
        for (int track : new int[] {BASS, DRUMS, CHORDS, CLICK}) {
            assertThat(channel(sequence, track, ShortMessage.CONTROL_CHANGE))
                    .extracting(event -> data(event).getData1())
                    .contains(0, 32, 7, 10);
        }
    }

    @Test
    void chordNamesStandInTheFile() {
        var chord = new ChordAt(f(0, 1), ChordSymbol.parse("Am7").orElseThrow());
        assertThat(texts(read(line(Header.PLAIN, even(4).withChords(List.of(chord)))), 0, 1))
                .containsExactly("1920 Am7");
    }

    @Test
    void aLineThatBendsNoChordStaysOnOneChannel() {
        var bent = note(f(0, 1), f(1, 4), 5).withOrnaments(Ornaments.NONE.with(new Ornaments.Bend(2)));
        var chord = note(f(1, 2), f(1, 4), Place.of(2, 5), Technique.FINGER);
        var sequence = read(line(Header.PLAIN, bar(bent, note(f(1, 2), f(1, 4), 5), chord)));
        assertThat(channel(sequence, BASS, ShortMessage.PITCH_BEND)).isNotEmpty();
        assertThat(events(sequence, BASS)
                        .filter(event -> event.getMessage() instanceof ShortMessage)
                        .map(event -> data(event).getChannel())
                        .distinct())
                .containsExactly(0);
    }

    @Test
    void aPickupSoundsInsideTheCountIn() {
        var up = pickup(Meter.COMMON, f(7, 8), note(f(7, 8), f(1, 8), 5));
        var sequence = read(line(quarters(120), up, even(4).with(Changes.NONE.withSection("Verse"))));
        assertThat(ons(sequence, BASS).get(0).tick()).isEqualTo(1680);
        assertThat(texts(sequence, 0, 6)).containsExactly("0 Count-in", "1920 Start", "1920 Verse");
    }

    /** As a program numbers them: 1920 ticks to a bar of 4/4, the first from tick 0 on. */
    @Test
    void withoutCountInBarOneIsTheFirstAndTheMetronomeClicksOn() {
        var sequence = uncounted(line(quarters(160), even(4), even(4).with(Changes.NONE.withSection("Verse"))));
        assertThat(ons(sequence, BASS))
                .extracting(On::tick)
                .containsExactly(0L, 480L, 960L, 1440L, 1920L, 2400L, 2880L, 3360L);
        assertThat(ons(sequence, CLICK))
                .startsWith(new On(0, 84, 100), new On(480, 79, 80))
                .hasSize(8);
        assertThat(texts(sequence, 0, 6)).containsExactly("0 Start", "1920 Verse");
        // two bars of 4/4 at 160: 3 s
        assertThat(sequence.getMicrosecondLength()).isEqualTo(3_000_000);
    }

    /** The clicks of two bars would count in; of these one is left, and silent but for the pickup. */
    @Test
    void withoutCountInAPickupHasABarToItself() {
        var up = pickup(Meter.COMMON, f(7, 8), note(f(7, 8), f(1, 8), 5));
        var sequence = uncounted(line(quarters(160), up, even(4)));
        assertThat(ons(sequence, BASS)).extracting(On::tick).startsWith(1680L, 1920L);
        assertThat(ons(sequence, CLICK)).extracting(On::tick).containsExactly(1920L, 2400L, 2880L, 3360L);
    }

    @Test
    void whatIsSetBeforeTheFirstNoteIsSetWithoutCountInAsWell() {
        var line = RandomLines.line(3);
        assertThat(uncounted(line).getTracks()).hasSize(read(line).getTracks().length);
        for (int track = 0; track < 5; track++) {
            assertThat(settings(uncounted(line), track)).isEqualTo(settings(read(line), track));
        }
    }

    private static List<String> settings(Sequence sequence, int track) {
        return Stream.of(ShortMessage.PROGRAM_CHANGE, ShortMessage.CONTROL_CHANGE)
                .flatMap(kind -> channel(sequence, track, kind).stream())
                .map(event -> data(event).getChannel() + " " + data(event).getCommand() + " "
                        + data(event).getData1() + " " + data(event).getData2())
                .toList();
    }

    private static Sequence uncounted(Line line) {
        var performance = Performance.of(line);
        return read(MidiFile.of(performance, Band.of(performance), Opening.FIRST_BAR));
    }

    @Test
    void aShortBarHasItsOwnTimeSignature() {
        var sequence =
                read(line(quarters(120), even(4), even(4).withNotes(List.of()).between(f(0, 1), f(1, 2)), even(4)));
        assertThat(events(sequence, 0)
                        .filter(event -> event.getMessage() instanceof MetaMessage meta && meta.getType() == 0x58)
                        .map(event -> event.getTick() + " " + ((MetaMessage) event.getMessage()).getData()[0]))
                .containsExactly("0 4", "3840 2", "4800 4");
    }

    @Test
    void chordsAreOnTheirOwnChannelAndDrumsOnTheTenth() {
        var sequence = read(RandomLines.line(3));
        assertThat(channel(sequence, DRUMS, ShortMessage.NOTE_ON))
                .isNotEmpty()
                .allMatch(event -> data(event).getChannel() == 9);
        assertThat(channel(sequence, CHORDS, ShortMessage.NOTE_ON))
                .isNotEmpty()
                .allMatch(event -> data(event).getChannel() == 10);
    }

    @Test
    void repeatsAreUnfolded() {
        // rule: count-in: one bar played three times is twelve quarters after the count-in
        var repeated = even(4).with(Repeats.NONE.withStart().with(new Repeats.RepeatEnd(Optional.of(3))));
        assertThat(ons(read(line(quarters(120), repeated)), BASS))
                .extracting(On::tick)
                .containsExactlyElementsOf(
                        IntStream.range(4, 16).mapToObj(i -> 480L * i).toList());
    }

    @Test
    void jumpsAreUnfolded() {
        // rule: jumps-unfold, count-in: four quarters of count-in, A with the Fine, B with D.C. al Fine, A again
        var fine = even(4).with(Repeats.NONE.with(Roadmap.NONE.withFine()));
        var jump = new Roadmap.Jump(Roadmap.From.CAPO, Roadmap.Until.FINE);
        var back = even(2).with(Repeats.NONE.with(Roadmap.NONE.with(jump)));
        assertThat(ons(read(line(quarters(120), fine, back)), BASS))
                .extracting(On::tick)
                .containsExactly(1920L, 2400L, 2880L, 3360L, 3840L, 4800L, 5760L, 6240L, 6720L, 7200L);
    }

    @Test
    void aPracticeTempoIsWrittenAsTempo() {
        // rule: practice-tempo: 92 at 75 % is 69, 869565 microseconds
        var sequence = read(MidiFile.of(Performance.of(line(quarters(92), even(4)), Playing.at(75))));
        assertThat(events(sequence, 0)
                        .filter(event -> event.getMessage() instanceof MetaMessage meta && meta.getType() == 0x51)
                        .map(event -> new BigInteger(1, ((MetaMessage) event.getMessage()).getData()).intValue()))
                .containsExactly(869_565);
    }

    @Test
    void titlesKeepTheirLetters() {
        // UTF-8: common practice, no source
        var header = Header.PLAIN.withTitle("Großer Bär, Ночь 夜");
        assertThat(texts(read(line(header, even(4))), 0, 3)).containsExactly("0 Großer Bär, Ночь 夜");
    }

    @Test
    void everyRandomLineReadsBackEqual() {
        for (long seed = 0; seed < 200; seed++) {
            var performance = Performance.of(RandomLines.line(seed));
            var sequence = read(MidiFile.of(performance));
            var wanted = new ArrayList<>(performance.notes().stream()
                    .map(note -> new On(Ticks.of(note.when().at()), note.pitch(), note.velocity()))
                    .toList());
            assertThat(sorted(ons(sequence, BASS))).as("seed %d", seed).isEqualTo(sorted(wanted));
            assertThat(channel(sequence, BASS, ShortMessage.NOTE_OFF))
                    .as("seed %d", seed)
                    .hasSize(wanted.size());
        }
    }

    private static List<On> sorted(List<On> ons) {
        return ons.stream()
                .sorted(Comparator.comparingLong(On::tick)
                        .thenComparingInt(On::key)
                        .thenComparingInt(On::velocity))
                .toList();
    }

    @Test
    void theSequencerHearsTheSecondsOfThePerformance() {
        // a tempo change inside a tuplet may fall between two ticks: half a tick at the slowest tempo for each
        for (long seed = 0; seed < 100; seed++) {
            var performance = Performance.of(RandomLines.line(seed));
            var sequence = read(MidiFile.of(performance));
            long last = IntStream.range(0, sequence.getTracks().length)
                    .mapToLong(track -> sequence.getTracks()[track].ticks())
                    .max()
                    .orElseThrow();
            double end = performance.tempos().seconds(f(last, 1920));
            assertThat(sequence.getMicrosecondLength() / 1e6)
                    .as("seed %d", seed)
                    .isCloseTo(end, within(0.002 + halfTicks(performance)));
        }
    }

    private static double halfTicks(Performance performance) {
        var changes = performance.tempos().changes();
        double slowest = changes.stream()
                .mapToDouble(change -> change.quartersPerMinute().toDouble())
                .min()
                .orElseThrow();
        return (changes.size() - 1) * 0.5 * 60 / (slowest * 480);
    }

    @Test
    void theSameLineGivesTheSameBytes() {
        var line = RandomLines.line(11);
        assertThat(MidiFile.of(Performance.of(line))).isEqualTo(MidiFile.of(Performance.of(line)));
        var performance = Performance.of(line);
        assertThat(MidiFile.of(performance, Band.of(performance), Opening.COUNT_IN))
                .isEqualTo(MidiFile.of(performance));
    }
}
