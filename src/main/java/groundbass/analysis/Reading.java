package groundbass.analysis;

import groundbass.analysis.Onset.Sounding;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.theory.Approach;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Key;
import groundbass.theory.Pitch;
import groundbass.theory.Scale;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads what each note means from its key, its chord and its neighbours. */
final class Reading {
    /** Past such a silence, a note leads nowhere. */
    private static final Fraction LONGEST_SILENCE = Fraction.of(1, 2);

    /** So often outside, a pitch class is meant. */
    private static final int RECURS = 3;

    private static final List<Integer> BLUE = List.of(3, 6, 10);
    private static final List<Integer> RAISED_IN_MINOR = List.of(9, 11);

    private final List<Onset> onsets;

    /** Where playing goes on after a bar beside the next bar: back, for a repeat, and at the end, as lines go round. */
    private final Map<Integer, Integer> back;

    private final Names names = new Names();

    private Reading(Line line, List<Onset> onsets) {
        this.onsets = onsets;
        this.back = back(line);
    }

    private static Map<Integer, Integer> back(Line line) {
        var back = new HashMap<Integer, Integer>();
        int first = line.firstNumber();
        var played = line.played();
        for (int i = 1; i < played.size(); i++) {
            int from = played.get(i - 1).bar();
            int to = played.get(i).bar();
            if (to <= from) {
                back.put(first + from, first + to);
            }
        }
        back.putIfAbsent(first + line.bars().size() - 1, first);
        return back;
    }

    static List<Tone> of(Line line, List<Onset> onsets) {
        var tones = new Reading(line, onsets).tones();
        var outside = new int[12];
        tones.stream().filter(tone -> tone.role() == Role.OUTSIDE).forEach(tone -> outside[pitchClass(tone)]++);
        return tones.stream()
                .map(tone -> tone.role() == Role.OUTSIDE && outside[pitchClass(tone)] >= RECURS
                        ? with(tone, Role.RECURRING)
                        : tone)
                .toList();
    }

    private static int pitchClass(Tone tone) {
        return tone.pitch().name().pitchClass();
    }

    private static Tone with(Tone tone, Role role) {
        return new Tone(
                tone.at(),
                tone.pitch(),
                tone.key(),
                tone.degree(),
                tone.chord(),
                tone.chordDegree(),
                role,
                tone.approach());
    }

    private List<Tone> tones() {
        var tones = new ArrayList<Tone>();
        for (int i = 0; i < onsets.size(); i++) {
            for (var note : onsets.get(i).notes()) {
                tones.add(tone(i, note));
            }
        }
        return tones;
    }

    private Tone tone(int index, Sounding note) {
        var onset = onsets.get(index);
        var next = neighbour(index, 1, note.midi());
        var pitch = spelled(note, onset.key(), next.map(Neighbour::midi).orElse(note.midi()));
        var chordDegree = onset.chord().flatMap(chord -> chord.degree(note.midi()));
        var approach =
                next.filter(this::belongs).flatMap(target -> Approach.of(onset.key(), note.midi(), target.midi()));
        return new Tone(
                note.at(),
                pitch,
                onset.key(),
                Degree.of(onset.key().tonic(), pitch.name()),
                onset.chord(),
                chordDegree,
                role(index, note, chordDegree, next),
                approach);
    }

    /** A pitch before or after, and when. */
    private record Neighbour(int midi, Onset onset) {}

    /** The nearest pitch of the next onset, or of the one before, that differs; none past a long silence. */
    private Optional<Neighbour> neighbour(int index, int way, int midi) {
        for (int i = index + way; i >= 0 && i < onsets.size(); i += way) {
            var earlier = onsets.get(Math.min(i, i - way));
            var later = onsets.get(Math.max(i, i - way));
            if (later.at().minus(earlier.end()).isAfter(LONGEST_SILENCE)) {
                return Optional.empty();
            }
            int nearest = nearest(onsets.get(i), midi);
            if (nearest != midi) {
                return Optional.of(new Neighbour(nearest, onsets.get(i)));
            }
        }
        return Optional.empty();
    }

    private static int nearest(Onset onset, int midi) {
        int nearest = onset.notes().get(0).midi();
        for (var note : onset.notes()) {
            nearest = Math.abs(note.midi() - midi) < Math.abs(nearest - midi) ? note.midi() : nearest;
        }
        return nearest;
    }

    private Pitch spelled(Sounding note, Key key, int next) {
        return note.note()
                .ornaments()
                .spelling()
                .map(name -> Pitch.sounding(name, note.midi()))
                .orElseGet(() -> Pitch.sounding(names.name(key, note.midi(), next), note.midi()));
    }

    private Role role(int index, Sounding note, Optional<Degree> chordDegree, Optional<Neighbour> next) {
        var onset = onsets.get(index);
        if (chordDegree.isPresent()) {
            return inChord(onset.chord().orElseThrow(), chordDegree.get());
        }
        if (isInKey(onset.key(), note.midi())) {
            return Role.SCALE_TONE;
        }
        if (!isFirst(onset) && leads(note.midi(), next, afterGoingBack(index, note.midi()))) {
            return Role.APPROACH;
        }
        var before = neighbour(index, -1, note.midi());
        if (next.isPresent() && before.isPresent() && isBetween(note.midi(), before.get(), next.get())) {
            return Role.PASSING;
        }
        return isColour(onset, note.midi()) ? Role.COLOUR : Role.OUTSIDE;
    }

    /** What stands first in its bar is an arrival, not on the way. */
    private static boolean isFirst(Onset onset) {
        return onset.position().at().isZero();
    }

    private boolean leads(int midi, Optional<Neighbour> next, Optional<Neighbour> back) {
        return Stream.of(next, back)
                .flatMap(Optional::stream)
                .anyMatch(target -> Math.abs(target.midi() - midi) == 1 && isGoal(target));
    }

    /** What a note may lead to from outside: a tone of the chord; of the key, where there is no chord. */
    private boolean isGoal(Neighbour target) {
        var chord = target.onset().chord();
        return chord.isPresent()
                ? chord.get().degree(target.midi()).isPresent()
                : isInKey(target.onset().key(), target.midi());
    }

    /** The first pitch after the last of a bar from which playing goes back. */
    private Optional<Neighbour> afterGoingBack(int index, int midi) {
        int bar = onsets.get(index).position().bar();
        boolean last =
                index + 1 == onsets.size() || onsets.get(index + 1).position().bar() > bar;
        if (!last || !back.containsKey(bar)) {
            return Optional.empty();
        }
        return onsets.stream()
                .filter(onset -> onset.position().bar() >= back.get(bar))
                .findFirst()
                .map(onset -> new Neighbour(nearest(onset, midi), onset));
    }

    private static Role inChord(Chord chord, Degree degree) {
        if (degree.number() == 1) {
            return Role.ROOT;
        }
        return chord.guideTones().contains(degree) ? Role.GUIDE_TONE : Role.CHORD_TONE;
    }

    /** Steps of at most a tone on both sides, at least one of them a semitone. */
    private boolean isBetween(int midi, Neighbour before, Neighbour next) {
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

    private boolean belongs(Neighbour neighbour) {
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
