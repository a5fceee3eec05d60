package groundbass.checks.slip;

import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.remark.Severity;
import groundbass.text.Message;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;

/**
 * A chord whose root never sounds and that few notes belong to, or whose third or seventh the notes contradict, may be
 * mistyped; where another chord holds nearly all of them, that one is named. The limits are common practice, no source.
 */
final class ChordsFitTheirNotes implements Rule {
    private static final int FEWEST = 3;
    private static final int FEWEST_CLEAR = 2;
    private static final int SEVERAL = 2;
    private static final double FEW = 0.5;
    private static final double MOST = 0.75;
    private static final double BETTER = 0.1;
    private static final double MUCH_BETTER = 0.2;
    private static final List<Quality> USUAL =
            List.of(Quality.MAJOR, Quality.MINOR, Quality.SEVENTH, Quality.MINOR_SEVENTH, Quality.MAJOR_SEVENTH);

    private static final Degree THIRD = new Degree(3, 0);
    private static final Degree MINOR_THIRD = new Degree(3, -1);
    private static final Degree SEVENTH = new Degree(7, 0);
    private static final Degree MINOR_SEVENTH = new Degree(7, -1);
    private static final List<Contradiction> CONTRADICTIONS = List.of(
            new Contradiction(THIRD, MINOR_THIRD),
            new Contradiction(MINOR_THIRD, THIRD),
            new Contradiction(SEVENTH, MINOR_SEVENTH),
            new Contradiction(MINOR_SEVENTH, SEVENTH));

    /** A tone that tells the chord, and the one that tells another. A lowered third is blue over a lowered seventh. */
    private record Contradiction(Degree own, Degree other) {}

    /** What sounds while one chord holds. */
    private record Stretch(Chord chord, List<Tone> tones) {
        /** How many of the notes are tones of a chord, from 0 to 1. */
        double share(Chord of) {
            return share(tone -> isIn(of, tone));
        }

        /** How many of the notes are tones of a chord or lead to the next note by a semitone. */
        double shareWithApproach(Chord of) {
            return share(tone -> tone.role() == ToneRole.APPROACH || isIn(of, tone));
        }

        private double share(Predicate<Tone> fits) {
            return (double) tones.stream().filter(fits).count() / tones.size();
        }

        private static boolean isIn(Chord chord, Tone tone) {
            return chord.degree(tone.pitch().midi()).isPresent();
        }

        boolean hasRoot(Chord of) {
            return has(of.root().pitchClass())
                    || of.bass().filter(bass -> has(bass.pitchClass())).isPresent();
        }

        boolean has(int pitchClass) {
            return tones.stream().anyMatch(tone -> Math.floorMod(tone.pitch().midi(), 12) == pitchClass);
        }

        boolean beginsWith(NoteName root) {
            return Math.floorMod(tones.get(0).pitch().midi(), 12) == root.pitchClass();
        }

        /** Whether the other third or seventh sounds in place of the chord's own, so many times. */
        boolean contradicts(Chord of, int times) {
            return CONTRADICTIONS.stream().anyMatch(each -> sounds(of, each.own(), each.other(), times));
        }

        /** Whether the third that is written is outside the key; a chord without one has none. */
        boolean isStrange() {
            return Stream.of(THIRD, MINOR_THIRD)
                    .filter(chord.quality()::has)
                    .map(third -> third.above(chord.root()).pitchClass())
                    .anyMatch(
                            third -> tones.get(0).key().scale().stream().noneMatch(name -> name.pitchClass() == third));
        }

        /** Whether a bass that is no tone of its chord is written and not played. */
        boolean isWithoutBass() {
            return chord.bass()
                    .filter(bass -> !has(bass.pitchClass())
                            && chord.degree(bass.pitchClass()).isEmpty())
                    .isPresent();
        }

        private boolean sounds(Chord of, Degree own, Degree other, int times) {
            return of.quality().has(own)
                    && !(own.equals(THIRD) && of.quality().has(MINOR_SEVENTH))
                    && !has(own.above(of.root()).pitchClass())
                    && times(other.above(of.root()).pitchClass()) >= times;
        }

        private long times(int pitchClass) {
            return tones.stream()
                    .filter(tone -> tone.role() != ToneRole.APPROACH && tone.role() != ToneRole.PASSING)
                    .filter(tone -> Math.floorMod(tone.pitch().midi(), 12) == pitchClass)
                    .count();
        }
    }

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var stretches = stretches(evidence.analysis().tones());
        var chords = stretches.stream().map(Stretch::chord).distinct().toList();
        return stretches.stream()
                .filter(stretch -> stretch.tones().size() >= fewest(evidence, stretch))
                .filter(stretch -> isDoubtful(stretch, chords))
                .flatMap(stretch -> better(stretch, chords).map(chord -> finding(evidence, stretch, chord)).stream());
    }

    private static List<Stretch> stretches(List<Tone> tones) {
        var stretches = new ArrayList<Stretch>();
        var open = new ArrayList<Tone>();
        for (var tone : tones) {
            if (!open.isEmpty() && !tone.chord().equals(open.get(0).chord())) {
                close(open, stretches);
            }
            open.add(tone);
        }
        close(open, stretches);
        return stretches;
    }

    private static void close(List<Tone> open, List<Stretch> stretches) {
        if (!open.isEmpty()) {
            open.get(0).chord().ifPresent(chord -> stretches.add(new Stretch(chord, List.copyOf(open))));
        }
        open.clear();
    }

    /** Two notes are enough where the first begins with the chord, or none belongs to it. */
    private static int fewest(Evidence evidence, Stretch stretch) {
        boolean together = evidence.beginsWithChord(stretch.tones().get(0));
        return together || stretch.share(stretch.chord()) == 0 ? FEWEST_CLEAR : FEWEST;
    }

    private static boolean isDoubtful(Stretch stretch, List<Chord> chords) {
        var chord = stretch.chord();
        return (!stretch.hasRoot(chord) && stretch.share(chord) <= FEW)
                || stretch.contradicts(chord, isOtherwiseElsewhere(chord, chords) || stretch.isStrange() ? 1 : SEVERAL)
                || stretch.isWithoutBass();
    }

    /** Whether the line has another chord on the same root, so that one was easily typed for the other. */
    private static boolean isOtherwiseElsewhere(Chord chord, List<Chord> chords) {
        return chords.stream().anyMatch(other -> other.root().equals(chord.root()) && !other.equals(chord));
    }

    private static Optional<Chord> better(Stretch stretch, List<Chord> chords) {
        var written = stretch.chord();
        double better = stretch.hasRoot(written) ? BETTER : MUCH_BETTER;
        double needed = stretch.isWithoutBass() ? MOST : Math.max(MOST, stretch.share(written) + better);
        return candidates(stretch, chords)
                .filter(chord -> !chord.equals(written))
                .filter(chord -> stretch.beginsWith(chord.bass().orElse(chord.root())))
                .filter(chord -> !stretch.contradicts(chord, 1) && stretch.shareWithApproach(chord) >= needed)
                .max(Comparator.comparingDouble(stretch::shareWithApproach)
                        .thenComparing(chord -> chord.quality() == written.quality())
                        .thenComparing(chords::contains)
                        .thenComparing(chord -> -chord.tones().size()));
    }

    /** The chords of the line, and the usual ones on the root that is written and on the note that sounds first. */
    private static Stream<Chord> candidates(Stretch stretch, List<Chord> chords) {
        var first = stretch.tones().get(0).pitch().name();
        var near = Stream.of(stretch.chord().root(), first).flatMap(root -> Stream.concat(
                        USUAL.stream(), Stream.of(stretch.chord().quality()))
                .map(quality -> Chord.of(root, quality)));
        var overBass = new Chord(stretch.chord().root(), stretch.chord().quality(), Optional.of(first));
        return Stream.of(chords.stream(), near, Stream.of(overBass))
                .flatMap(each -> each)
                .distinct();
    }

    private static Finding finding(Evidence evidence, Stretch stretch, Chord better) {
        var tones = stretch.tones();
        var first = evidence.note(tones.get(0).at());
        var last = evidence.note(tones.get(tones.size() - 1).at());
        return new Finding(
                "chord-in-question",
                Severity.WORTH_A_LOOK,
                evidence.passage(first, last),
                List.of(),
                Message.of("checks.chord-in-question", stretch.chord().toString(), better.toString()),
                List.of());
    }
}
