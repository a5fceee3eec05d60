package groundbass.script.thread.talk;

import groundbass.script.checking.Timeline;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Run;
import groundbass.script.grammar.TalkHearing;
import groundbass.script.thread.talk.BestCut.Cut;
import groundbass.script.words.Word;
import java.util.ArrayList;
import java.util.List;

/** Follows a talk sentence by sentence, and judges the clauses that it understands to their last word. */
public final class Talk {
    private final TalkHearing hearing;
    private final Listening listening;
    private Course course = Course.START;

    public Talk(Timeline timeline, TalkHearing hearing) {
        this.hearing = hearing;
        this.listening = new Listening(timeline, hearing.unpunctuated());
    }

    public List<HeardClause> hear(List<Word> sentence) {
        course = course.atSentence(!hearing.unpunctuated());
        var run = hearing.run(sentence);
        return hearing.unpunctuated() ? unmarked(run) : marked(run);
    }

    private List<HeardClause> marked(Run run) {
        var heard = new ArrayList<HeardClause>();
        for (var clause : run.clauses()) {
            if (!heard.isEmpty() && course.question().isEmpty() && isBareNo(clause)) {
                heard.replaceAll(HeardClause::untold);
                course = course.takingBack();
            }
            var step = listening.hear(course, clause);
            heard.add(step.heard());
            course = step.after();
        }
        return heard;
    }

    /** Wrong is what is so in neither way to cut the talk, or where its words alone say what the clause is. */
    private List<HeardClause> unmarked(Run run) {
        var byWords = byWords(run);
        var cuts = new BestCut(run, listening).clauses(course);
        course = cuts.isEmpty() ? course : cuts.get(cuts.size() - 1).step().after();
        return cuts.stream()
                .map(cut -> isSure(cut, byWords)
                        ? cut.step().heard()
                        : cut.step().heard().doubted())
                .toList();
    }

    private static boolean isSure(Cut cut, List<HeardClause> byWords) {
        return cut.plain()
                || byWords.stream()
                        .anyMatch(other ->
                                other.isWrong() && other.overlaps(cut.step().heard()));
    }

    /** Cut where the words say that clauses begin. */
    private List<HeardClause> byWords(Run run) {
        var at = course;
        var heard = new ArrayList<HeardClause>();
        for (var clause : run.clauses()) {
            var step = listening.hear(at, clause);
            heard.add(step.heard());
            at = step.after();
        }
        return heard;
    }

    /** "..., well, no, ...": what was said before in this sentence is meant no longer. */
    private static boolean isBareNo(Clause clause) {
        return clause.units().get(0).is(Tie.NO) && !Listening.isMusical(clause);
    }
}
