package groundbass.web.desk.facts;

import groundbass.catalog.episode.Episode;
import groundbass.checks.LevelSuggestion;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.lesson.Lesson;
import groundbass.score.Tuning.OpenString;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.view.FieldProblems;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * The facts of a lesson: those that are typed, and those that its line tells.
 *
 * @param path       of the episode on the desk
 * @param conflict   whether another window saved in the meantime
 * @param techniques of the plucking hand in the main line, by line text's words
 * @param strings    the open strings from low to high
 * @param suggestion the level that the line's features suggest; empty while nothing is written
 */
public record FactsView(
        String path,
        String title,
        FactsForm form,
        boolean conflict,
        List<String> techniques,
        String strings,
        int exercises,
        Optional<LevelSuggestion> suggestion,
        FieldProblems problems) {
    /** Rows that stand free for further courses. */
    private static final int FREE_ROWS = 2;

    static FactsView of(
            Episode episode, EpisodeDocument document, FactsForm form, boolean conflict, FieldProblems problems) {
        var lesson = Lesson.of(document);
        return new FactsView(
                DeskContext.path(episode),
                document.title(),
                form,
                conflict,
                lesson.techniques(),
                strings(lesson),
                lesson.exercises().size(),
                Optional.of(lesson.main())
                        .filter(line -> line.bars().stream()
                                .anyMatch(bar -> !bar.notes().isEmpty()))
                        .map(LevelSuggestion::of),
                problems);
    }

    public List<Level> levels() {
        return List.of(Level.values());
    }

    public List<Clearance> clearances() {
        return List.of(Clearance.values());
    }

    /** The courses, and rows for more. */
    public List<CoursePointer> courses() {
        var rows = new ArrayList<>(form.facts().courses());
        rows.addAll(Collections.nCopies(FREE_ROWS, new CoursePointer("", "")));
        return rows;
    }

    private static String strings(Lesson lesson) {
        var lowestFirst = new ArrayList<>(lesson.main().header().tuning().strings());
        Collections.reverse(lowestFirst);
        return lowestFirst.stream().map(OpenString::pitch).map(Object::toString).collect(Collectors.joining(" "));
    }
}
