package groundbass.web.desk.facts;

import groundbass.checks.level.LevelSuggestion;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.lesson.Lesson;
import groundbass.score.Tuning.OpenString;
import groundbass.web.desk.room.RoomView;
import groundbass.web.view.LanguageRow;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The facts of a lesson: those that are typed, and those that its line tells.
 *
 * @param techniques of the plucking hand in the main line, by line text's words
 * @param strings    the open strings from low to high
 * @param suggestion the level that the line's features suggest; empty while nothing is written
 */
public record FactsView(
        RoomView room,
        EpisodeDocument document,
        List<String> techniques,
        String strings,
        Optional<LevelSuggestion> suggestion) {
    /** Rows that stand free for further courses. */
    private static final int FREE_ROWS = 2;

    static FactsView of(RoomView room, EpisodeDocument document) {
        var lesson = Lesson.of(document);
        return new FactsView(
                room,
                document,
                lesson.techniques(),
                strings(lesson),
                Optional.of(lesson.main())
                        .filter(line -> line.bars().stream()
                                .anyMatch(bar -> !bar.notes().isEmpty()))
                        .map(LevelSuggestion::of));
    }

    public List<Level> levels() {
        return List.of(Level.values());
    }

    public List<Clearance> clearances() {
        return List.of(Clearance.values());
    }

    /** Templates would take the settings of a document for a setter. */
    public String language() {
        return document.settings().language();
    }

    public List<LanguageRow> languages() {
        return LanguageRow.with(language());
    }

    public List<CoursePointer> courses() {
        return rows(document.facts());
    }

    /** What is folded away, in one line: who is credited. */
    public String credits() {
        return joined(document.rights().composer(), document.rights().credit());
    }

    /** What a student needs, in one line. */
    public String needed() {
        return joined(document.facts().gear(), document.facts().video());
    }

    /** Where the lesson leads on to, in one line. */
    public String leadsOn() {
        return joined(
                document.facts().courses().stream().map(CoursePointer::title).toArray(String[]::new));
    }

    private static String joined(String... parts) {
        return Stream.of(parts).filter(part -> !part.isBlank()).collect(Collectors.joining(" · "));
    }

    /** The courses, and rows for more. */
    static List<CoursePointer> rows(LessonFacts facts) {
        var rows = new ArrayList<>(facts.courses());
        rows.addAll(Collections.nCopies(FREE_ROWS, new CoursePointer("", "")));
        return List.copyOf(rows);
    }

    private static String strings(Lesson lesson) {
        var lowestFirst = new ArrayList<>(lesson.main().header().tuning().strings());
        Collections.reverse(lowestFirst);
        return lowestFirst.stream().map(OpenString::pitch).map(Object::toString).collect(Collectors.joining(" "));
    }
}
