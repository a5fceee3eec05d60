package groundbass.checks.slip;

import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.checks.finding.Evidence;
import groundbass.performance.Played;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.theory.Scale;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/**
 * How well places suit a note: over its chord, between its neighbours, under the hand. All figures are ours (rule:
 * slip-weights).
 */
final class PlaceSense {
    private static final double ROOT = 3;
    private static final double CHORD_TONE = 2;
    private static final double IN_KEY = 1;
    private static final double WITH_A_REASON = 0.5;
    private static final double MOST_BETTER = 2;
    private static final double MOST_WORSE = -3;
    private static final double ROOT_AS_USUAL = 1.5;
    private static final double ROOT_LOST = -2;
    private static final int WIDE_LEAP = 7;
    private static final int HAND = 4;
    private static final int FAR = 9;
    private static final double FAR_OFF = 2.5;
    private static final int STEP = 2;
    private static final double SMOOTH = 2;
    private static final double CHORD_TONE_WRITTEN = 1;

    private final Evidence evidence;
    private final Played note;
    private final Optional<Tone> tone;
    private final boolean rootAsUsual;

    /** The pitches of the notes before and after it, as far as they have one, and the frets at which a finger stops them. */
    private final int[] pitches;

    private final int[] frets;

    /** @param rootAsUsual whether the line has the root wherever a chord begins as this note does */
    PlaceSense(Evidence evidence, Played note, boolean rootAsUsual) {
        this.evidence = evidence;
        this.note = note;
        this.tone = evidence.analysis().at(note.at());
        this.rootAsUsual = rootAsUsual;
        var neighbours = neighbours();
        this.pitches = neighbours.stream()
                .flatMapToInt(other -> midi(other.note().place()).stream())
                .toArray();
        this.frets = neighbours.stream()
                .filter(Played::isStopped)
                .mapToInt(other -> other.fret().orElseThrow())
                .toArray();
    }

    /** By how much another place suits the chord better than where the note stands; negative where it suits it less. */
    double harmony(Place other) {
        if (note.note().isDead() || !(other instanceof Fretted)) {
            return 0;
        }
        double better = belonging(other) - belongingAsWritten();
        return Math.max(MOST_WORSE, Math.min(MOST_BETTER, better)) + root(other);
    }

    /** By how much another place lies better between the notes around it. */
    double neighbourhood(Place other) {
        var written = note.note().place();
        return leaps(written, other) + reach(written, other) + smoothness(written, other);
    }

    /** Whether it is a tone of its chord where it stands. */
    boolean isInChord() {
        return evidence.isInChord(note.at());
    }

    /** What speaks for the written place by itself: a tone of the chord, and no leap away from everything else. */
    double reason() {
        return isInChord() && !isFarOff(note.note().place()) ? CHORD_TONE_WRITTEN : 0;
    }

    /** Whether a place is in the key or the chord, as far as it has a pitch. */
    boolean belongs(Place place) {
        return belonging(place) >= IN_KEY;
    }

    /** Whether both are the same pitch, so that only the hand knows the difference. */
    boolean isSamePitch(Place other) {
        var pitch = midi(other);
        return pitch.isPresent() && pitch.equals(midi(note.note().place()));
    }

    /** Whether a place is the same note in another octave on another string, as players leap. */
    boolean isOctaveOf(Place other) {
        var here = midi(note.note().place());
        var there = midi(other);
        return here.isPresent()
                && there.isPresent()
                && other.string() != note.string()
                && Math.abs(here.getAsInt() - there.getAsInt()) == 12;
    }

    /** What a place is above the root of the chord, in semitones; empty without chord or pitch. */
    OptionalInt aboveRoot(Place place) {
        var root = tone.flatMap(Tone::chord).map(chord -> chord.root().pitchClass());
        var pitch = midi(place);
        return root.isPresent() && pitch.isPresent()
                ? OptionalInt.of(Math.floorMod(pitch.getAsInt() - root.get(), 12))
                : OptionalInt.empty();
    }

    /** Whether it leads on by a step. */
    boolean leadsOn() {
        var next = note.index() + 1 < evidence.notes().size()
                ? midi(evidence.notes().get(note.index() + 1).note().place())
                : OptionalInt.empty();
        var here = midi(note.note().place());
        return next.isPresent() && here.isPresent() && Math.abs(next.getAsInt() - here.getAsInt()) <= STEP;
    }

    private double belongingAsWritten() {
        double belonging = belonging(note.note().place());
        boolean hasReason = tone.filter(each -> each.role() != ToneRole.OUTSIDE).isPresent();
        return hasReason ? Math.max(WITH_A_REASON, belonging) : belonging;
    }

    private double belonging(Place place) {
        var pitch = midi(place);
        if (pitch.isEmpty() || tone.isEmpty()) {
            return IN_KEY;
        }
        var degree = tone.get().chord().flatMap(chord -> chord.degree(pitch.getAsInt()));
        if (degree.isPresent()) {
            return degree.get().number() == 1 ? ROOT : CHORD_TONE;
        }
        var key = tone.get().key();
        return Scale.of(key.mode()).contains(key.tonic(), pitch.getAsInt()) ? IN_KEY : 0;
    }

    private double root(Place other) {
        if (!rootAsUsual) {
            return 0;
        }
        boolean here = belonging(note.note().place()) == ROOT;
        boolean there = belonging(other) == ROOT;
        return here == there ? 0 : there ? ROOT_AS_USUAL : ROOT_LOST;
    }

    private double leaps(Place written, Place other) {
        int saved = way(written) - way(other);
        return saved >= 2 * WIDE_LEAP ? 1.5 : saved >= WIDE_LEAP ? 1 : saved <= -WIDE_LEAP ? -1 : 0;
    }

    /** What leads by steps from the note before to the one after, where the written place leaves both by leaps. */
    private double smoothness(Place written, Place other) {
        boolean leaps = distances(written).filter(apart -> apart > STEP).count() == 2;
        return leaps && isPassing(other) ? SMOOTH : 0;
    }

    private boolean isPassing(Place place) {
        var pitch = midi(place);
        if (pitch.isEmpty() || pitches.length < 2) {
            return false;
        }
        int in = pitch.getAsInt() - pitches[0];
        int out = pitches[1] - pitch.getAsInt();
        return in * out > 0 && Math.abs(in) <= STEP && Math.abs(out) <= STEP;
    }

    /** Semitones from the note before and to the note after. */
    private int way(Place place) {
        return distances(place).sum();
    }

    private IntStream distances(Place place) {
        var pitch = midi(place);
        return pitch.isEmpty()
                ? IntStream.empty()
                : Arrays.stream(pitches).map(other -> Math.abs(other - pitch.getAsInt()));
    }

    private double reach(Place written, Place other) {
        boolean here = isWithin(HAND, written);
        boolean there = isWithin(HAND, other);
        if (here == there) {
            return 0;
        }
        return here ? -1 : isFarOff(written) ? FAR_OFF : 1;
    }

    private boolean isFarOff(Place place) {
        return !isWithin(FAR, place);
    }

    private boolean isWithin(int reach, Place place) {
        if (!(place instanceof Fretted fretted) || fretted.fret() == 0) {
            return true;
        }
        return frets.length == 0 || Arrays.stream(frets).anyMatch(other -> Math.abs(other - fretted.fret()) <= reach);
    }

    private List<Played> neighbours() {
        var all = evidence.notes();
        return all.subList(Math.max(0, note.index() - 1), Math.min(all.size(), note.index() + 2)).stream()
                .filter(other -> other != note)
                .toList();
    }

    private OptionalInt midi(Place place) {
        return place instanceof Fretted fretted
                ? OptionalInt.of(evidence.line().header().tuning().midi(fretted))
                : OptionalInt.empty();
    }
}
