package groundbass.linetext;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Arrival;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.score.Technique;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A line with most of what line text knows; times worked out by hand in whole notes. */
class LanternStreetTest {
    static final String TEXT = """
            # a line of our own, to show the form
            title   Lantern Street
            key     A dorian
            meter   4/4
            tempo   96
            strings E A D G
            style   finger

            bar 1 over Am7
            1    E5
            1&   E5, E8
            2    A5, Ax
            2&   A7 short
            3    E5 down, E7 up, A5 down
            4    E8*2 slap, D5 pop, E5 slap

            bar 2 over D9, Am7 at 4
            1    A5
            1&   rest
            2-3  D4+G5 pluck
            4    A5, D5, D3 pull

            section Turnaround
            bar 3 = bar 2
            bar 4 = bar 1 counts 3-4
            1    A8 until 3 + G5
            2    G7, G5 slide
            """;

    private static Note note(Fraction onset, Fraction length, Place place, Technique technique) {
        return Note.plucked(onset, length, place, technique);
    }

    private static Fraction of(long over, long under) {
        return Fraction.of(over, under);
    }

    @Test
    void theExampleReadsWithoutProblems() {
        var reading = LineText.read("lantern.line", TEXT);
        assertThat(reading.problems()).isEmpty();
        assertThat(reading.line().header().title()).isEqualTo("Lantern Street");
        assertThat(reading.line().bars()).hasSize(4);
    }

    @Test
    void countLinesShareTheirBeats() {
        var bar = LineText.read(TEXT).line().bar(1);
        assertThat(bar.notes().subList(0, 6))
                .containsExactly(
                        note(of(0, 1), of(1, 8), Place.of(4, 5), Technique.FINGER),
                        note(of(1, 8), of(1, 16), Place.of(4, 5), Technique.FINGER),
                        note(of(3, 16), of(1, 16), Place.of(4, 8), Technique.FINGER),
                        note(of(1, 4), of(1, 16), Place.of(3, 5), Technique.FINGER),
                        note(of(5, 16), of(1, 16), Place.dead(3), Technique.FINGER),
                        note(of(3, 8), of(1, 8), Place.of(3, 7), Technique.FINGER)
                                .withOrnaments(groundbass.score.Ornaments.NONE.with(Mark.SHORT)));
        assertThat(bar.notes().subList(6, 12))
                .containsExactly(
                        note(of(1, 2), of(1, 12), Place.of(4, 5), Technique.THUMB_DOWN),
                        note(of(7, 12), of(1, 12), Place.of(4, 7), Technique.THUMB_UP),
                        note(of(2, 3), of(1, 12), Place.of(3, 5), Technique.THUMB_DOWN),
                        note(of(3, 4), of(1, 8), Place.of(4, 8), Technique.SLAP),
                        note(of(7, 8), of(1, 16), Place.of(2, 5), Technique.POP),
                        note(of(15, 16), of(1, 16), Place.of(4, 5), Technique.SLAP));
    }

    @Test
    void aPullComesUnpluckedFromTheNoteBefore() {
        var last = LineText.read(TEXT).line().bar(2).notes().get(5);
        assertThat(last.pluck()).isEmpty();
        assertThat(last.arrival()).contains(Arrival.by(Arrival.Kind.PULL));
    }

    @Test
    void aCopiedBarHasTheSameNotesAndChords() {
        var line = LineText.read(TEXT).line();
        assertThat(line.bar(3).notes()).isEqualTo(line.bar(2).notes());
        assertThat(line.bar(3).chords()).isEqualTo(line.bar(2).chords());
        assertThat(line.bar(3).copy()).contains(Copy.of(2));
        assertThat(line.bar(3).changes().section()).isEqualTo(Optional.of("Turnaround"));
    }

    @Test
    void copiedCountsAreCompletedByTheLinesThatFollow() {
        var notes = LineText.read(TEXT).line().bar(4).notes();
        assertThat(notes).hasSize(10);
        assertThat(notes.get(0)).isEqualTo(note(of(0, 1), of(1, 2), Place.of(3, 8), Technique.FINGER));
        assertThat(notes.get(1)).isEqualTo(note(of(0, 1), of(1, 4), Place.of(1, 5), Technique.FINGER));
        assertThat(notes.subList(4, 10))
                .isEqualTo(LineText.read(TEXT).line().bar(1).notes().subList(6, 12));
    }

    @Test
    void aMistakeIsShownAsTheDesignShowsIt() {
        var reading = LineText.read("lantern.line", TEXT.replace("E5, E8\n", "E5, E58\n"));
        assertThat(Told.of(reading)).isEqualTo("""
                        lantern.line:11:10: error: Fret 58 on string E; this neck has frets 0 to 24. Did you mean 5 or 8?
                            1&   E5, E58
                                     ^^^
                        """);
        assertThat(reading.line().bar(1).notes()).hasSize(11);
    }
}
