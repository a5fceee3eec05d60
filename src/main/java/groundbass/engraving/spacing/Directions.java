package groundbass.engraving.spacing;

import groundbass.score.Fraction;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.Arrays;
import java.util.List;
import java.util.Set;

/**
 * Which way the stems of a voice point (rule: stem-direction, stem-direction-chord, stem-direction-beam): away from the
 * note farthest from the middle line, together under a beam, apart where there are two voices (rule: two-voice-stems).
 */
final class Directions {
    private static final int MIDDLE = 4;

    private final List<Element> elements;
    private final boolean[] up;

    private final Set<Fraction> raised;

    private Directions(Voice voice, Set<Fraction> raised) {
        this.raised = raised;
        elements = voice.elements();
        up = new boolean[elements.size()];
    }

    /** True at the index of each element whose stem points up. */
    static boolean[] of(WrittenBar bar, int index, Set<Fraction> raised) {
        var voice = bar.voices().get(index);
        var directions = new Directions(voice, raised);
        directions.single(voice);
        int[] voices = voices(bar, index);
        for (int i = 0; i < voices.length; i++) {
            directions.up[i] = voices[i] > 1 ? index == 0 : directions.up[i];
        }
        return directions.up;
    }

    /** How many voices stand where each element does; what shares a beam shares its side. */
    static int[] voices(WrittenBar bar, int index) {
        var voice = bar.voices().get(index);
        int[] voices = voice.elements().stream().mapToInt(bar::voicesAt).toArray();
        for (var beam : voice.beams()) {
            int most =
                    Arrays.stream(voices, beam.first(), beam.last() + 1).max().orElse(1);
            Arrays.fill(voices, beam.first(), beam.last() + 1, most);
        }
        return voices;
    }

    private void single(Voice voice) {
        for (int i = 0; i < up.length; i++) {
            up[i] = elements.get(i) instanceof Chord chord && pull(List.of(chord)) < 0;
        }
        for (int i = 0; i < up.length; i++) {
            up[i] |= isOnMiddleLine(i) && neighbourIsUp(i, -1) && neighbourIsUp(i, 1);
        }
        for (var beam : voice.beams()) {
            var chords = elements.subList(beam.first(), beam.last() + 1).stream()
                    .filter(Chord.class::isInstance)
                    .map(Chord.class::cast)
                    .toList();
            boolean together = isUpTogether(chords);
            for (int i = beam.first(); i <= beam.last(); i++) {
                up[i] = together;
            }
        }
    }

    /** Farthest note decides; at equal distance the majority; then down. */
    private boolean isUpTogether(List<Chord> chords) {
        int pull = pull(chords);
        if (pull != 0) {
            return pull < 0;
        }
        int majority = chords.stream()
                .mapToInt(chord -> Integer.signum(pull(List.of(chord))))
                .sum();
        return majority < 0;
    }

    /** How far the highest note is above the middle line, less how far the lowest is below it. */
    private int pull(List<Chord> chords) {
        int highest = Integer.MIN_VALUE;
        int lowest = Integer.MAX_VALUE;
        for (var chord : chords) {
            for (var head : chord.heads()) {
                highest = Math.max(highest, position(chord, head));
                lowest = Math.min(lowest, position(chord, head));
            }
        }
        return (highest - MIDDLE) - (MIDDLE - lowest);
    }

    private boolean isOnMiddleLine(int index) {
        return elements.get(index) instanceof Chord chord
                && chord.heads().size() == 1
                && position(chord, chord.heads().get(0)) == MIDDLE;
    }

    /** Whether the next chord in that direction has its stem up; false where there is none. */
    private boolean neighbourIsUp(int index, int step) {
        for (int i = index + step; i >= 0 && i < up.length; i += step) {
            if (elements.get(i) instanceof Chord) {
                return up[i];
            }
        }
        return false;
    }

    private int position(Chord chord, Head head) {
        return Positions.of(head) - (raised.contains(chord.onset()) ? Positions.OCTAVE : 0);
    }
}
