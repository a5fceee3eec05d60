package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Line;
import groundbass.theory.Degree;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * What the notes of a bar are for: of which tones of the chord it consists, said before them; where they have gone and
 * where they lead, said when they have been played. Bars are asked in their order, for what was said is not said again.
 */
public final class BarIdea {
    /** More than so many tones are no idea (common practice, no source). */
    private static final int MOST_DEGREES = 4;

    private static final int FEWEST_TONES = 4;

    private final Wording words;
    private final Melody melody;
    private final FigureRemarks figures;
    private final Walks walks;
    private final ClimbingBass bass;
    private final Leads leads;

    public BarIdea(Line line, List<Tone> tones, Wording words) {
        this.words = words;
        this.melody = new Melody(line, tones);
        this.figures = new FigureRemarks(words, melody);
        this.walks = new Walks(words, melody);
        this.bass = new ClimbingBass(words, melody);
        this.leads = new Leads(words, line, tones);
    }

    /**
     * Sentences about a bar.
     *
     * @param before whole sentences before its notes
     * @param after  for each breath those after its notes
     */
    public record Said(List<String> before, List<List<String>> after) {
        /** Nothing. */
        public static final Said NOTHING = new Said(List.of(), List.of());
    }

    /** Of the bar of this index, told in these breaths. */
    public Said of(int index, List<Breath> breaths) {
        var bass = this.bass.of(index);
        boolean walking = bass.isEmpty() && !figures.isRun(index, breaths);
        var walk = walking ? walks.of(index, breaths.get(breaths.size() - 1)) : bass;
        var way = walk.isPresent() ? walk : figures.of(index, breaths);
        var suspended = new Suspension(words).of(melody.moving(index));
        var approach = leads.of(melody.number(index)).stream()
                .filter(lead ->
                        way.filter(remark -> remark.tones().contains(lead.at())).isEmpty());
        var remarks = Stream.concat(Stream.concat(way.stream(), suspended.stream()), approach)
                .toList();
        boolean told = breaths.stream().anyMatch(Breath::earlier);
        var before = told || way.isPresent() ? List.<String>of() : chordTones(index);
        return new Said(
                before, breaths.stream().map(breath -> in(breath, remarks)).toList());
    }

    private static List<String> in(Breath breath, List<Remark> remarks) {
        return breath.earlier() && remarks.isEmpty()
                ? List.of()
                : remarks.stream()
                        .filter(remark -> breath.has(remark.at()))
                        .map(Remark::text)
                        .toList();
    }

    private List<String> chordTones(int index) {
        var use = use(index);
        boolean again = index > 0 && use.equals(use(index - 1));
        return use.filter(each -> !again).map(this::said).stream().toList();
    }

    private String said(Set<Degree> degrees) {
        return words.say(
                "idea.only",
                words.list(degrees.stream()
                        .map(degree -> words.say("degree." + degree))
                        .toList()));
    }

    /** Which tones of its one chord a bar consists of, in the order in which they come first. */
    private Optional<Set<Degree>> use(int index) {
        var bar = melody.bar(index);
        var degrees = new ArrayList<Degree>();
        bar.forEach(tone -> tone.chordDegree().ifPresent(degrees::add));
        Set<Degree> distinct = new LinkedHashSet<>(degrees);
        boolean one = bar.stream().map(Tone::chord).distinct().count() == 1;
        boolean idea = one
                && bar.size() >= FEWEST_TONES
                && degrees.size() == bar.size()
                && distinct.size() > 1
                && distinct.size() <= MOST_DEGREES;
        return idea ? Optional.of(distinct) : Optional.empty();
    }
}
