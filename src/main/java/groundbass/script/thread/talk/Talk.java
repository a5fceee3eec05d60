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

/** Follows a talk sentence by sentence, and judges its clauses. */
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
        var begun = course;
        var cuts = new BestCut(run, listening).clauses(begun);
        course = cuts.isEmpty() ? begun : cuts.get(cuts.size() - 1).step().after();
        boolean doubtful = cuts.stream().anyMatch(cut -> isDoubtful(cut, run));
        var byWords = doubtful ? byWords(run, begun) : List.<HeardClause>of();
        var heard = new ArrayList<HeardClause>();
        for (var cut : cuts) {
            var clause = cut.step().heard();
            heard.add(isDoubtful(cut, run) && !isWrong(clause, byWords) ? clause.doubted() : clause);
        }
        return heard;
    }

    /** Wrong, and its words do not say by themselves that it begins there. */
    private static boolean isDoubtful(Cut cut, Run run) {
        return cut.step().heard().isWrong() && !run.isPlain(cut.from());
    }

    private static boolean isWrong(HeardClause clause, List<HeardClause> byWords) {
        return byWords.stream().anyMatch(other -> other.isWrong() && other.overlaps(clause));
    }

    /** Cut where the words say that clauses begin. */
    private List<HeardClause> byWords(Run run, Course begun) {
        var at = begun;
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
