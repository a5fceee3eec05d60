package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Position;
import groundbass.theory.Degree;
import groundbass.theory.Fragment;
import groundbass.theory.Pitch;
import groundbass.theory.Scale;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A figure in one sentence: from which count to which it goes, and over which degrees of its chord. */
final class FigureWords {
    private static final Degree ROOT = Degree.parse("1");
    private static final String OCTAVE = "octave";

    private final Wording words;
    private final Function<Position, Optional<String>> counts;

    /** @param counts what players call a moment of the line, where they have a word for it */
    FigureWords(Wording words, Function<Position, Optional<String>> counts) {
        this.words = words;
        this.counts = counts;
    }

    /**
     * Empty where nobody has words for its counts or for its notes.
     *
     * @param chordSaid whether its chord is said, because its bar has others
     */
    Optional<String> of(Figure figure, boolean chordSaid) {
        var chord = figure.first().chord().filter(each -> chordSaid).map(words::over);
        return name(figure).flatMap(name -> between(figure.from(), figure.to(), chord, name));
    }

    /** Two figures, the second of which goes on where the first turns. */
    Optional<String> of(Figure figure, Figure next) {
        if (degrees(figure).isEmpty() || degrees(next).isEmpty()) {
            return Optional.empty();
        }
        String both = next.isWayBackOf(figure)
                ? words.say("figure.back", overChord(figure))
                : words.say("figure.then", overChord(figure), onward(next));
        return between(figure.from(), next.to(), Optional.empty(), both);
    }

    private Optional<String> between(Position first, Position last, Optional<String> chord, String name) {
        var from = counts.apply(first);
        var to = counts.apply(last);
        if (from.isEmpty() || to.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(chord.map(over -> words.say("figure.over", from.get(), to.get(), over, name))
                .orElseGet(() -> words.say("figure", from.get(), to.get(), name)));
    }

    private Optional<String> name(Figure figure) {
        if (figure.isChromatic()) {
            var first = figure.first().pitch().name();
            return Optional.of(
                    words.said(new Fragment(first, Scale.CHROMATIC, Optional.empty(), figure.isRising()).said()));
        }
        return figure.first().chord().isEmpty()
                ? inKey(figure)
                : Optional.of(figure).filter(each -> !degrees(each).isEmpty()).map(this::overChord);
    }

    /** {@code from the root by way of the third and the fifth up to the octave}. */
    private String overChord(Figure figure) {
        return words.say(
                "figure.from", words.say("degree.from." + degrees(figure).get(0)), onward(figure));
    }

    /** {@code by way of the third and the fifth up to the octave}. */
    private String onward(Figure figure) {
        var degrees = degrees(figure);
        int last = degrees.size() - 1;
        return words.say(
                figure.isRising() ? "figure.up" : "figure.down",
                words.list(degrees.subList(1, last).stream().map(this::onTheWay).toList()),
                words.say("degree.to." + degrees.get(last)));
    }

    private String onTheWay(String degree) {
        String own = "degree.way." + degree;
        return words.has(own) ? words.say(own) : words.say("degree.way", words.say("degree." + degree));
    }

    /** By the keys of their names; none where players have no name for one of them, or nothing holds. */
    private List<String> degrees(Figure figure) {
        var all = figure.tones().stream()
                .filter(tone -> tone.chord().isPresent())
                .flatMap(tone -> degree(tone, figure).stream())
                .toList();
        return all.size() == figure.tones().size() ? all : List.of();
    }

    private Optional<String> degree(Tone tone, Figure figure) {
        return degree(tone)
                .map(degree -> isOctave(degree, tone, figure) ? OCTAVE : degree.toString())
                .filter(degree -> words.has("degree.from." + degree));
    }

    private Optional<String> inKey(Figure figure) {
        List<Pitch> pitches = figure.tones().stream().map(Tone::pitch).toList();
        return Fragment.of(figure.first().key(), Optional.empty(), pitches)
                .map(fragment -> words.said(fragment.said()));
    }

    /** A root above another of the same figure. */
    private static boolean isOctave(Degree degree, Tone tone, Figure figure) {
        return degree.equals(ROOT)
                && figure.tones().stream()
                        .anyMatch(other -> degree(other).equals(Optional.of(ROOT))
                                && other.pitch().midi() < tone.pitch().midi());
    }

    private static Optional<Degree> degree(Tone tone) {
        return tone.chordDegree()
                .or(() -> Degree.of(
                        tone.chord().orElseThrow().root(), tone.pitch().name()));
    }
}
