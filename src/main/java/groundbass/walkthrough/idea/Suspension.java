package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** A fourth that a chord holds back, and the third that it falls to. */
final class Suspension {
    private static final Degree FOURTH = Degree.parse("4");
    private static final Degree THIRD = Degree.parse("3");
    private static final Degree MINOR_THIRD = Degree.parse("b3");

    private final Wording words;

    Suspension(Wording words) {
        this.words = words;
    }

    /** @param moving the notes of a bar, none twice in a row */
    Optional<Remark> of(List<Tone> moving) {
        return IntStream.range(1, moving.size())
                .filter(i -> isResolved(moving.get(i - 1), moving.get(i)))
                .mapToObj(i -> remark(moving.get(i - 1), moving.get(i)))
                .findFirst();
    }

    private static boolean isResolved(Tone held, Tone after) {
        boolean falls = is(held, FOURTH) && (is(after, THIRD) || is(after, MINOR_THIRD));
        boolean oneRoot = held.chord().map(Chord::root).equals(after.chord().map(Chord::root));
        return falls && oneRoot && held.pitch().midi() > after.pitch().midi();
    }

    private static boolean is(Tone tone, Degree degree) {
        return tone.chordDegree().equals(Optional.of(degree));
    }

    private Remark remark(Tone held, Tone after) {
        String said = words.say(
                "suspension",
                words.name(held.pitch().name()),
                words.name(after.pitch().name()));
        return new Remark(after.at().position(), said, List.of());
    }
}
