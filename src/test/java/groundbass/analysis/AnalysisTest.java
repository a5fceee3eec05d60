package groundbass.analysis;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import groundbass.theory.Approach;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Degrees and roles worked out by hand. rule: scale-degrees, chord-tones, approach-notes. */
class AnalysisTest {
    private static Line line(String key, String bars) {
        var reading = LineText.read("key " + key + "\nmeter 4/4\ntempo 100\nstrings E A D G\n\n" + bars);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    private static List<ToneRole> roles(Line line) {
        return Analysis.of(line).tones().stream().map(Tone::role).toList();
    }

    @Test
    void everyNoteHasItsDegreeInTheChordAndInTheKey() {
        var line = line("G dorian", "bar 1 over C9\n1-4  A3, D2, G3, D0\n");
        var tones = Analysis.of(line).tones();
        assertThat(tones).extracting(Tone::figure).containsExactly("1", "3", "b7", "9");
        assertThat(tones)
                .extracting(tone -> tone.degree().orElseThrow().toString())
                .containsExactly("4", "6", "b3", "5");
        assertThat(roles(line))
                .containsExactly(ToneRole.ROOT, ToneRole.GUIDE_TONE, ToneRole.GUIDE_TONE, ToneRole.CHORD_TONE);
        assertThat(Analysis.of(line).figures(Passage.bar(1))).isEqualTo("1 3 b7 9");
    }

    @Test
    void aChordHoldsUntilTheNext() {
        var line = line("C major", "bar 1 over C, F at 3\n1-4 A3, A3, A3, A3\nbar 2\n1-4 A3, rest, rest, rest\n");
        assertThat(Analysis.of(line).tones()).extracting(Tone::figure).containsExactly("1", "1", "5", "5", "5");
    }

    /** A walking bar: root, third, fifth, and a semitone below the next root. */
    @Test
    void aSemitoneBeforeTheNextRootIsAnApproach() {
        var line = line("F major", "bar 1 over F6\n1-4 E1, A0, A3, A4\nbar 2 over D7\n1-4 A5, rest, rest, rest\n");
        var tones = Analysis.of(line).tones();
        assertThat(tones.get(3).role()).isEqualTo(ToneRole.APPROACH);
        assertThat(tones.get(3).approach()).contains(Approach.CHROMATIC_FROM_BELOW);
        assertThat(tones.get(3).pitch()).hasToString("C#2");
    }

    @Test
    void aNoteBetweenItsNeighboursPasses() {
        var line = line("C major", "bar 1 over C\n1-4 A3, A5, A6, A5\n");
        assertThat(roles(line)).doesNotContain(ToneRole.OUTSIDE);
    }

    @Test
    void theBlueNotesOfASeventhChordAreColour() {
        var line = line("A mixolydian", "bar 1 over A7\n1-4 A0, A3, D5, A0\n");
        assertThat(roles(line).get(1)).isEqualTo(ToneRole.COLOUR);
    }

    @Test
    void aWrongNoteIsOutsideUntilItRecurs() {
        var once = line("C major", "bar 1 over C\n1-4 A3, G1, G5, A3\n");
        assertThat(roles(once)).contains(ToneRole.OUTSIDE);
        var often = line("C major", "bar 1 over C\n1-4 A3, G1, G5, G1\nbar 2\n1-4 A3, G1, G5, A3\n");
        assertThat(roles(often)).contains(ToneRole.RECURRING).doesNotContain(ToneRole.OUTSIDE);
    }

    @Test
    void notesStruckTogetherAreNamed() {
        var line = line("G dorian", "bar 1 over C9\n1-4 A3, D2+G3, rest, rest\n");
        var together = Analysis.of(line).together();
        assertThat(together).hasSize(1);
        assertThat(Messages.of(Locale.ENGLISH).say(together.get(0).voicing().said()))
                .isEqualTo("the third and the seventh of C9");
        assertThat(together.get(0).notes())
                .containsExactly(
                        new NoteAt(new Position(1, Fraction.of(1, 4)), 2),
                        new NoteAt(new Position(1, Fraction.of(1, 4)), 1));
    }

    @Test
    void theKeyOfAScaleIsFound() {
        var line = line("C major", "bar 1\n1-4 A3, A5, D2, D3, D5, G2, G4, G5\nbar 2\n1-4 A3, rest, rest, D2\n");
        assertThat(Analysis.of(line).key().best()).isEqualTo(new Key(NoteName.of(Letter.C), Mode.MAJOR));
    }

    @Test
    void everyPitchedNoteOfAnyLineIsRead() {
        int together = 0;
        for (long seed = 1; seed <= 500; seed++) {
            var line = RandomLines.line(seed);
            long pitched = line.bars().stream()
                    .flatMap(bar -> bar.notes().stream())
                    .filter(note -> !note.isDead())
                    .count();
            var analysis = Analysis.of(line);
            assertThat(analysis.tones()).as("seed " + seed).hasSize((int) pitched);
            assertThat(analysis.together())
                    .as("seed " + seed)
                    .allMatch(each -> each.notes().size() >= 2);
            together += analysis.together().size();
        }
        assertThat(together).isPositive();
    }

    @Test
    void everyRoleHasAName() {
        for (var role : ToneRole.values()) {
            assertThat(Messages.of(Locale.GERMAN).has(role.messageKey())).isTrue();
        }
    }
}
