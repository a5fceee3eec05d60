package groundbass.engraving.sheet;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.RecordingCanvas;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.sign.TestWords;
import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Repeats;
import groundbass.score.Technique;
import groundbass.theory.ChordSymbol;
import groundbass.writing.Writing;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/**
 * Small examples, a primitive a line, as this program itself drew them: what changes is seen, what is wrong is not. After
 * a wanted change, run with {@code -Dengraving.record=true} and read the difference as you would read code. What a
 * drawing should be, the tests that name a rule say.
 */
class RecordedDrawingTest {
    private static final Path FOLDER = Path.of("src/test/resources/groundbass/engraving");
    private static final Fraction SIXTEENTH = Fraction.of(1, 16);

    private static Note note(int sixteenth, int length, Place place, Technique technique) {
        return Note.plucked(SIXTEENTH.times(sixteenth), SIXTEENTH.times(length), place, technique);
    }

    private static void isAsRecorded(String name, Line line) throws IOException {
        var none = SheetOptions.Header.NONE;
        var bare = SheetOptions.of(Paper.screen(80), new TestWords(), none, SheetOptions.Footer.NONE)
                .withLegend(false);
        var canvas = new RecordingCanvas();
        Layout.of(Writing.of(line), bare).forEach(page -> page.drawOn(canvas));
        var file = FOLDER.resolve(name + ".txt");
        if (Boolean.getBoolean("engraving.record")) {
            Files.createDirectories(FOLDER);
            Files.writeString(file, canvas.text(), StandardCharsets.UTF_8);
        }
        assertThat(canvas.text()).isEqualTo(Files.readString(file, StandardCharsets.UTF_8));
    }

    @Test
    void aSlappedBarWithDeadNotesAndAHammerOn() throws IOException {
        var hammered = new Note(
                SIXTEENTH.times(3),
                SIXTEENTH,
                Place.of(4, 5),
                Optional.empty(),
                Optional.of(Arrival.by(Arrival.Kind.HAMMER)),
                Ornaments.NONE);
        var notes = List.of(
                note(0, 1, Place.of(4, 0), Technique.SLAP),
                note(1, 1, Place.dead(4), Technique.SLAP),
                note(2, 1, Place.of(4, 3), Technique.SLAP),
                hammered,
                note(4, 2, Place.of(2, 2), Technique.POP),
                note(8, 8, Place.of(3, 2), Technique.SLAP));
        var bar = Bar.of(Meter.COMMON, notes)
                .withChords(List.of(
                        new ChordAt(Fraction.ZERO, ChordSymbol.parse("F#m7").orElseThrow())));
        isAsRecorded("slapped", new Line(Header.PLAIN, List.of(bar)));
    }

    @Test
    void aHeldNoteUnderAMovingLine() throws IOException {
        var moving = IntStream.range(0, 4).mapToObj(i -> note(4 * i, 4, Place.of(1, 2 * i), Technique.PLUCK));
        var notes = java.util.stream.Stream.concat(
                        java.util.stream.Stream.of(note(0, 16, Place.of(4, 3), Technique.PLUCK)), moving)
                .toList();
        isAsRecorded("held", new Line(Header.PLAIN, List.of(Bar.of(Meter.COMMON, notes))));
    }

    @Test
    void aRepeatWithTwoEndings() throws IOException {
        var bar = Bar.of(Meter.of(2, 4), List.of(note(0, 8, Place.of(3, 3), Technique.FINGER)));
        var bars = List.of(
                bar.with(Repeats.NONE.withStart()),
                bar.with(Repeats.NONE
                        .with(new Repeats.Ending(1, 1))
                        .with(Repeats.RepeatEnd.PLAIN)
                        .withEndingEnd()),
                bar.with(Repeats.NONE.with(new Repeats.Ending(2, 2)).withEndingEnd()));
        isAsRecorded("endings", new Line(Header.PLAIN.with(Meter.of(2, 4)), bars));
    }
}
