package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Fragment;
import groundbass.walkthrough.idea.Figures.Chain;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;

/** A figure in one sentence: the degrees of its chord that it goes over. */
final class FigureWords {
    private static final Degree ROOT = Degree.parse("1");
    private static final String OCTAVE = "octave";

    /** What lies further from the root is named within the octave, as the ear hears it on the way. */
    private static final int SEVENTH = 7;

    private final Wording words;

    FigureWords(Wording words) {
        this.words = words;
    }

    /** {@code That is root, flat seventh and octave.} */
    String named(Chain chain, String who) {
        return words.say("figure.named", who, list(chain));
    }

    /** {@code That is root, flat seventh and octave again.} */
    String again(Chain chain, String who) {
        return words.say("figure.again", who, list(chain));
    }

    String chromatic(Chain chain, String who) {
        return words.say(chain.ways().get(0).isRising() ? "figure.half.up" : "figure.half.down", who);
    }

    /** {@code up the A minor pentatonic scale}, of what has such a name. */
    Optional<String> scale(Chain chain) {
        var pitches = chain.tones().stream().map(Tone::pitch).toList();
        return Fragment.of(chain.first().key(), Optional.empty(), pitches).map(fragment -> words.said(fragment.said()));
    }

    /** {@code So the bar spells out the D7 chord, up and back down.} */
    String chord(Chain chain) {
        Chord chord = chain.first().chord().orElseThrow();
        return words.say(chain.ways().get(0).isRising() ? "figure.chord.up" : "figure.chord.down", words.chord(chord));
    }

    /** {@code So it goes from the root through the third and the fifth to the octave.} */
    String way(Chain chain) {
        var out = chain.ways().get(0);
        var degrees = degrees(out);
        int last = degrees.size() - 1;
        String way = words.say(
                out.isRising() ? "figure.up" : "figure.down",
                words.say("degree.from." + degrees.get(0)),
                words.list(degrees.subList(1, last).stream().map(this::onTheWay).toList()),
                words.say("degree.to." + degrees.get(last)));
        return words.say("sentence", chain.ways().size() == 1 ? way : back(chain, way));
    }

    private String back(Chain chain, String way) {
        var out = chain.ways().get(0);
        var home = chain.ways().get(1);
        if (home.tones().size() == out.tones().size()) {
            return words.say("figure.back", way);
        }
        var degrees = degrees(home);
        String to = words.say("degree.to." + degrees.get(degrees.size() - 1));
        return words.say(out.isRising() ? "figure.back.down" : "figure.back.up", way, to);
    }

    private String list(Chain chain) {
        return words.list(degrees(chain.ways().get(0)).stream()
                .map(degree -> words.say("degree." + degree))
                .toList());
    }

    private String onTheWay(String degree) {
        String own = "degree.way." + degree;
        return words.has(own) ? words.say(own) : words.say("degree.way", words.say("degree." + degree));
    }

    /** By the keys of their names, of all notes; none where players have no name for one of them, or nothing holds. */
    Optional<List<String>> degrees(Chain chain) {
        var all = chain.ways().stream().map(this::degrees).toList();
        return all.stream().anyMatch(List::isEmpty)
                ? Optional.empty()
                : Optional.of(all.stream().flatMap(List::stream).toList());
    }

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

    /** A root above another of the same figure. */
    private static boolean isOctave(Degree degree, Tone tone, Figure figure) {
        return degree.equals(ROOT)
                && figure.tones().stream()
                        .anyMatch(other -> degree(other).equals(Optional.of(ROOT))
                                && other.pitch().midi() < tone.pitch().midi());
    }

    private static Optional<Degree> degree(Tone tone) {
        return tone.chordDegree()
                .filter(degree -> degree.number() <= SEVENTH)
                .or(() -> Degree.of(
                        tone.chord().orElseThrow().root(), tone.pitch().name()));
    }
}
