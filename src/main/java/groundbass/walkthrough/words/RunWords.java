package groundbass.walkthrough.words;

import groundbass.analysis.Run;
import groundbass.analysis.Tone;
import groundbass.score.NoteAt;
import groundbass.score.Position;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Pitch;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** A run in one sentence: from where to where it goes, and along which scale or which tones of its chord. */
public final class RunWords {
    private static final Degree ROOT = Degree.parse("1");

    private final Wording words;
    private final Function<Position, Optional<String>> counts;
    private final List<Tone> tones;

    /** @param counts what players call a moment of the line, where they have a word for it */
    public RunWords(Wording words, Function<Position, Optional<String>> counts, List<Tone> tones) {
        this.words = words;
        this.counts = counts;
        this.tones = tones;
    }

    /** With the counts of its first note and, in one bar, its last. */
    public String of(Run run) {
        String name = name(run);
        var first = run.passage().from();
        var last = run.notes().get(run.notes().size() - 1).position();
        var from = counts.apply(first);
        var to = counts.apply(last).filter(count -> last.bar() == first.bar());
        if (from.isEmpty()) {
            return words.say("run.named", name);
        }
        return to.map(count -> words.say("run.span", from.get(), count, name))
                .orElseGet(() -> words.say("run.from", from.get(), name));
    }

    private String name(Run run) {
        var fragment = run.fragment();
        return fragment.chord()
                .map(chord -> words.say(fragment.rising() ? "run.up" : "run.down", degrees(run, chord)))
                .orElseGet(() -> words.said(fragment.said()));
    }

    /** {@code root, third, fifth}: what is played of the chord, which may be less than its symbol says. */
    private String degrees(Run run, Chord chord) {
        var pitches = run.notes().stream().flatMap(note -> pitch(note).stream()).toList();
        int lowestRoot = pitches.stream()
                .filter(pitch -> degree(chord, pitch).filter(ROOT::equals).isPresent())
                .mapToInt(Pitch::midi)
                .min()
                .orElse(Integer.MAX_VALUE);
        return pitches.stream()
                .flatMap(pitch -> degree(chord, pitch).stream()
                        .map(degree -> degree.equals(ROOT) && pitch.midi() > lowestRoot
                                ? words.say("degree.octave")
                                : words.say("degree." + degree)))
                .reduce((one, two) -> words.say("list.more", one, two))
                .orElseThrow();
    }

    private static Optional<Degree> degree(Chord chord, Pitch pitch) {
        return chord.degree(pitch.name().pitchClass());
    }

    private Optional<Pitch> pitch(NoteAt note) {
        return tones.stream()
                .filter(tone -> tone.at().equals(note))
                .map(Tone::pitch)
                .findFirst();
    }
}
