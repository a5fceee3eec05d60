package groundbass.analysis;

import groundbass.analysis.NeighbourNotes.Neighbour;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Key;
import groundbass.theory.Scale;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Says what a note does in its key, over its chord and between its neighbours. */
final class Roles {
    private static final List<Integer> BLUE = List.of(3, 6, 10);
    private static final List<Integer> RAISED_IN_MINOR = List.of(9, 11);

    private final NeighbourNotes neighbours;

    Roles(NeighbourNotes neighbours) {
        this.neighbours = neighbours;
    }

    ToneRole of(int index, Onset onset, int midi) {
        var chordDegree = onset.chord().flatMap(chord -> chord.degree(midi));
        var next = neighbours.after(index, midi);
        if (chordDegree.isPresent()) {
            return inChord(onset.chord().orElseThrow(), chordDegree.get());
        }
        if (isInKey(onset.key(), midi)) {
            return ToneRole.SCALE_TONE;
        }
        if (!isFirst(onset) && leads(midi, next, neighbours.afterGoingBack(index, midi))) {
            return ToneRole.APPROACH;
        }
        var before = neighbours.before(index, midi);
        if (next.isPresent() && before.isPresent() && isBetween(midi, before.get(), next.get())) {
            return ToneRole.PASSING;
        }
        return isColour(onset, midi) ? ToneRole.COLOUR : ToneRole.OUTSIDE;
    }

    /** What stands first in its bar is an arrival, not on the way. */
    private static boolean isFirst(Onset onset) {
        return onset.position().at().isZero();
    }

    private static boolean leads(int midi, Optional<Neighbour> next, Optional<Neighbour> back) {
        return Stream.of(next, back)
                .flatMap(Optional::stream)
                .anyMatch(target -> Math.abs(target.midi() - midi) == 1 && isGoal(target));
    }

    /** What a note may lead to from outside: a tone of the chord; of the key, where there is no chord. */
    private static boolean isGoal(Neighbour target) {
        var chord = target.onset().chord();
        return chord.isPresent()
                ? chord.get().degree(target.midi()).isPresent()
                : isInKey(target.onset().key(), target.midi());
    }

    private static ToneRole inChord(Chord chord, Degree degree) {
        if (degree.number() == 1) {
            return ToneRole.ROOT;
        }
        return chord.guideTones().contains(degree) ? ToneRole.GUIDE_TONE : ToneRole.CHORD_TONE;
    }

    /** Steps of at most a tone on both sides, at least one of them a semitone. */
    private static boolean isBetween(int midi, Neighbour before, Neighbour next) {
        if (!belongs(before) || !belongs(next)) {
            return false;
        }
        int from = Math.abs(midi - before.midi());
        int to = Math.abs(midi - next.midi());
        return from <= 2 && to <= 2 && Math.min(from, to) == 1;
    }

    private static boolean isColour(Onset onset, int midi) {
        var key = onset.key();
        int above = Math.floorMod(midi - key.tonic().pitchClass(), 12);
        boolean minorish = key.mode().isMinorish();
        if (minorish && (RAISED_IN_MINOR.contains(above) || above == 6)) {
            return true;
        }
        return onset.chord()
                        .filter(chord -> hasBlueSeventh(chord) && isBlueIn(chord, midi))
                        .isPresent()
                || (hasBlueKey(onset) && BLUE.contains(above));
    }

    private static boolean hasBlueSeventh(Chord chord) {
        return chord.quality().has(new Degree(7, -1));
    }

    private static boolean isBlueIn(Chord chord, int midi) {
        return BLUE.contains(Math.floorMod(midi - chord.root().pitchClass(), 12));
    }

    /** Whether the key has the lowered seventh that goes with the blues. */
    private static boolean hasBlueKey(Onset onset) {
        return Scale.of(onset.key().mode()).semitones().contains(10);
    }

    static boolean belongs(Neighbour neighbour) {
        var onset = neighbour.onset();
        return isInKey(onset.key(), neighbour.midi())
                || onset.chord()
                        .flatMap(chord -> chord.degree(neighbour.midi()))
                        .isPresent();
    }

    private static boolean isInKey(Key key, int midi) {
        return Scale.of(key.mode()).contains(key.tonic(), midi);
    }
}
