package groundbass.web.desk.script;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.linetext.LineText;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.script.Chapter;
import groundbass.script.Chapters;
import groundbass.script.Proofreading;
import groundbass.script.RightWords;
import groundbass.script.Statement;
import groundbass.script.captions.Script;
import groundbass.script.checking.Verdict;
import groundbass.text.Messages;
import groundbass.web.desk.room.RoomView;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * A script and what was found in it.
 *
 * @param problems what could not be read, of the file or of its captions
 * @param lined    whether there is a line to check against
 * @param pieces   the words in order, cut where a statement begins or ends
 * @param wrong    what contradicts the line
 * @param proposed the chapters that the captions suggest, as a list of times
 */
public record ScriptView(
        RoomView room,
        String script,
        String chapters,
        List<String> problems,
        boolean lined,
        List<ScriptPieces.Piece> pieces,
        List<Wrong> wrong,
        Tally tally,
        String proposed) {
    private static final Logger log = LoggerFactory.getLogger(ScriptView.class);

    /** How many statements were found, and what came of them. */
    public record Tally(int found, long agree, long inPart, int contradict, long untold) {}

    /**
     * A statement that is not so.
     *
     * @param number from 1, as in the text
     * @param bar    0 where it is about no bar
     * @param time   when it is said; empty for plain text
     */
    public record Wrong(int number, String quote, String right, int bar, String count, String time) {}

    /** What cannot be checked because of a fault of ours is shown all the same, with a sentence that says so. */
    static ScriptView of(RoomView room, Episode episode, EpisodeDocument document, ScriptForm form, Messages messages) {
        try {
            return checked(room, document, form, messages);
        } catch (RuntimeException e) {
            log.error("the script of episode {} cannot be checked", episode.id(), e);
            return new ScriptView(
                    room,
                    form.script(),
                    form.chapters(),
                    List.of(messages.say("desk.script.problem.fault")),
                    !document.mainLine().isBlank(),
                    List.of(),
                    List.of(),
                    new Tally(0, 0, 0, 0, 0),
                    "");
        }
    }

    private static ScriptView checked(RoomView room, EpisodeDocument document, ScriptForm form, Messages messages) {
        var line = LineText.read(document.mainLine().text()).line();
        boolean lined = !document.mainLine().isBlank();
        var script = Script.read(form.isTooLong() ? "" : form.script());
        var language = Locale.forLanguageTag(document.settings().language());
        var read = lined ? Proofreading.of(script.spoken(), line, language) : new Proofreading(List.of());
        var wrong = wrong(read, script, line, messages);
        return new ScriptView(
                room,
                form.script(),
                form.chapters(),
                problems(form, script, messages),
                lined,
                ScriptPieces.of(script.spoken(), read.statements()),
                wrong,
                new Tally(read.statements().size(), read.agreeing(), read.readInPart(), wrong.size(), read.untold()),
                Chapters.list(proposed(script, document)));
    }

    static List<Chapter> proposed(Script script, EpisodeDocument document) {
        var line = LineText.read(document.mainLine().text()).line();
        var language = Locale.forLanguageTag(document.settings().language());
        return Chapters.propose(script, line, language, Messages.of(language));
    }

    private static List<String> problems(ScriptForm form, Script script, Messages messages) {
        var problems = new ArrayList<String>();
        if (!form.problem().isEmpty()) {
            problems.add(messages.say(form.problem()));
        }
        if (form.isTooLong()) {
            problems.add(messages.say("desk.script.problem.long", Proofreading.LONGEST));
        }
        script.problems()
                .forEach(problem -> problems.add(messages.say(
                        "desk.script.problem.line", problem.span().line(), messages.say(problem.sentence()))));
        Chapters.read(form.chapters())
                .problems()
                .forEach(row -> problems.add(messages.say("desk.script.problem.chapter", row)));
        return List.copyOf(problems);
    }

    private static List<Wrong> wrong(Proofreading read, Script script, Line line, Messages messages) {
        var words = new RightWords(messages, line.header().tuning());
        var all = new ArrayList<Wrong>();
        for (var statement : read.contradictions()) {
            var right = ((Verdict.Contradicts) statement.verdict()).right();
            var time = script.timeAt(statement.from());
            all.add(new Wrong(
                    all.size() + 1,
                    script.spoken().substring(statement.from(), statement.to()),
                    words.of(right),
                    statement.position().map(Position::bar).orElse(0),
                    count(statement, line),
                    time.isPresent() ? new Chapter(time.getAsLong(), "-").time() : ""));
        }
        return List.copyOf(all);
    }

    private static String count(Statement statement, Line line) {
        return statement
                .position()
                .flatMap(position -> Optional.of(line.inForce().get(line.indexOf(position.bar())))
                        .flatMap(inForce -> Count.at(position.at(), inForce.meter())))
                .map(Count::toString)
                .orElse("1");
    }

    /** Of those that are typed. */
    public long chapterCount() {
        return chapters.lines().filter(line -> !line.isBlank()).count();
    }
}
