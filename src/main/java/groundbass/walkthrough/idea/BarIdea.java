package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.theory.Degree;
import groundbass.walkthrough.words.Wording;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiPredicate;

/**
 * What a bar is made of, said before its notes: the figures that it consists of or, where it jumps about, the tones of
 * its chord that it uses.
 */
public final class BarIdea {
    /** More than so many figures are no idea, and more than so many tones not either (common practice, no source). */
    private static final int MOST_FIGURES = 2;

    private static final int MOST_DEGREES = 4;
    private static final int FEWEST_TONES = 4;

    /** So many notes of four belong to the chord where it is the idea of a bar. */
    private static final int OF_FOUR = 3;

    private final Line line;
    private final List<Tone> tones;
    private final Wording words;
    private final FigureWords figures;

    public BarIdea(Line line, List<Tone> tones, Wording words) {
        this.line = line;
        this.tones = tones;
        this.words = words;
        this.figures = new FigureWords(words, this::count);
    }

    private Optional<String> count(Position at) {
        return words.count(
                at.at(), line.inForce().get(at.bar() - line.firstNumber()).meter());
    }

    /** Which tones of a chord a bar uses, in the order in which they come first. */
    private record Use(Set<Degree> degrees, boolean all) {}

    /** Sentences about the bar of this index, told for the first time; what was said of the bar before is not said again. */
    public List<String> of(int index) {
        var named = Figure.of(tones(index));
        var sentences = said(index, named);
        if (!sentences.isEmpty() && named.size() <= MOST_FIGURES) {
            return news(index, sentences);
        }
        var use = use(tones(index));
        boolean again = index > 0 && use.equals(use(tones(index - 1)));
        return use.filter(each -> !again).map(this::said).stream().toList();
    }

    /** The same of a bar of which some stretches were told before: {@code told} from one moment of it to another. */
    public List<String> of(int index, BiPredicate<Fraction, Fraction> told) {
        var named = Figure.of(tones(index)).stream()
                .filter(figure -> !told.test(figure.from().at(), figure.to().at()))
                .toList();
        return named.size() <= MOST_FIGURES ? news(index, said(index, named)) : List.of();
    }

    private List<String> news(int index, List<String> sentences) {
        var before = index == 0 ? List.<String>of() : said(index - 1, Figure.of(tones(index - 1)));
        return sentences.stream().filter(sentence -> !before.contains(sentence)).toList();
    }

    /** Two that follow one another in one sentence. */
    private List<String> said(int index, List<Figure> named) {
        boolean chords = tones(index).stream().map(Tone::chord).distinct().count() > 1;
        if (named.size() == 2 && named.get(1).follows(named.get(0)) && !chords) {
            var both = figures.of(named.get(0), named.get(1));
            if (both.isPresent()) {
                return both.stream().toList();
            }
        }
        return named.stream()
                .flatMap(figure -> figures.of(figure, chords).stream())
                .toList();
    }

    private String said(Use use) {
        var names = use.degrees().stream()
                .map(degree -> words.say("degree.named", words.say("degree." + degree)))
                .toList();
        return words.say(use.all() ? "idea.only" : "idea.mainly", words.list(names));
    }

    private static Optional<Use> use(List<Tone> bar) {
        Set<Degree> degrees = new LinkedHashSet<>();
        bar.forEach(tone -> tone.chordDegree().ifPresent(degrees::add));
        long ofChord =
                bar.stream().filter(tone -> tone.chordDegree().isPresent()).count();
        boolean one = bar.stream().map(Tone::chord).distinct().count() == 1;
        boolean idea = one
                && bar.size() >= FEWEST_TONES
                && degrees.size() > 1
                && degrees.size() <= MOST_DEGREES
                && 4 * ofChord >= (long) OF_FOUR * bar.size();
        return idea ? Optional.of(new Use(degrees, ofChord == bar.size())) : Optional.empty();
    }

    private List<Tone> tones(int index) {
        var passage = Passage.bar(index + line.firstNumber());
        return tones.stream()
                .filter(tone -> passage.contains(tone.at().position()))
                .toList();
    }
}
