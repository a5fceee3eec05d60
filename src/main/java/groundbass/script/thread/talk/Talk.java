package groundbass.script.thread.talk;

import groundbass.script.checking.Timeline;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.TalkHearing;
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

    public List<Heard> hear(List<Word> sentence) {
        var heard = new ArrayList<Heard>();
        course = course.atSentence(!hearing.unpunctuated());
        for (var clause : hearing.clauses(sentence)) {
            if (!heard.isEmpty() && course.question().isEmpty() && isBareNo(clause)) {
                int first = hearing.unpunctuated() ? heard.size() - 1 : 0;
                heard.subList(first, heard.size()).replaceAll(Heard::untold);
                course = course.takingBack();
            }
            var step = listening.hear(course, clause);
            heard.add(step.heard());
            course = step.after();
        }
        return heard;
    }

    /** "..., well, no, ...": what was said before in this sentence is meant no longer. */
    private static boolean isBareNo(Clause clause) {
        return clause.units().get(0).is(Tie.NO) && !Listening.isMusical(clause);
    }
}
