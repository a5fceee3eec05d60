package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.theory.ChordSymbol.Chord;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** The one way worth naming that the notes of a bar go: from the root or to it, up or down, or there and back. */
final class Figures {
    private Figures() {}

    /**
     * Figures of a bar that are one to the ear.
     *
     * @param ways one, or two the second of which turns where the first ends
     */
    record Chain(List<Figure> ways) {
        Chain {
            ways = List.copyOf(ways);
        }

        List<Tone> tones() {
            return ways.stream()
                    .flatMap(figure -> figure.tones().stream())
                    .distinct()
                    .toList();
        }

        Tone first() {
            return ways.get(0).first();
        }

        Tone last() {
            return ways.get(ways.size() - 1).last();
        }

        /** Whether all of it belongs to its chord. */
        boolean isOfChord() {
            return tones().stream().allMatch(tone -> tone.chordDegree().isPresent());
        }

        /** Whether it goes up and down over all the tones of its chord. */
        boolean isWholeChord() {
            long degrees = tones().stream().map(Tone::chordDegree).distinct().count();
            int tones = first().chord().map(chord -> chord.tones().size()).orElse(0);
            return ways.size() == 2 && isOfChord() && degrees == tones;
        }

        boolean isChromatic() {
            return ways.size() == 1 && ways.get(0).isChromatic();
        }

        private boolean isWorthIt() {
            return isChromatic() || isWholeChord() || isRoot(first()) || isRoot(last()) || isScale();
        }

        /** Whether no chord holds, so that it can only be a stretch of a scale. */
        boolean isScale() {
            return ways.size() == 1
                    && tones().stream().allMatch(tone -> tone.chord().isEmpty());
        }

        private static boolean isRoot(Tone tone) {
            return tone.chord()
                    .map(Chord::root)
                    .filter(root -> root.pitchClass() == tone.pitch().name().pitchClass())
                    .isPresent();
        }
    }

    /** The longest that is not told by an earlier bar; a whole chord is one, however it is told. */
    static Optional<Chain> longest(List<Tone> moving, List<Breath> breaths) {
        return chains(moving).stream()
                .filter(Chain::isWorthIt)
                .filter(chain -> isFresh(chain, moving, breaths))
                .max(Comparator.<Chain>comparingInt(chain -> chain.tones().size())
                        .thenComparing(Chain::isChromatic));
    }

    private static boolean isFresh(Chain chain, List<Tone> moving, List<Breath> breaths) {
        boolean whole = chain.isWholeChord() && chain.tones().equals(moving);
        boolean earlier = breaths.stream().filter(Breath::earlier).anyMatch(breath -> chain.tones().stream()
                .anyMatch(breath::has));
        return whole || !earlier;
    }

    /** A figure that turns into another is one with it where it comes back, or where both are one chord; else no idea. */
    private static List<Chain> chains(List<Tone> moving) {
        var all = Figure.of(moving);
        var chains = new ArrayList<Chain>();
        int next = 0;
        while (next < all.size()) {
            int end = next + 1;
            while (end < all.size() && all.get(end).follows(all.get(end - 1))) {
                end++;
            }
            var chain = new Chain(all.subList(next, end));
            boolean returns = end - next == 2 && all.get(next + 1).comesBackOver(all.get(next));
            if (end - next == 1 || returns || end - next == 2 && chain.isOfChord()) {
                chains.add(chain);
            }
            next = end;
        }
        return chains;
    }
}
