package groundbass.catalog.episode;

import groundbass.catalog.FieldChecks;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.FieldProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** What keeps a document from becoming a revision. Whether its lines can be read is asked elsewhere. */
public final class DocumentCheck {
    public static final int MOST_EXERCISES = 30;
    public static final int MOST_COURSES = 10;

    private static final int LONGEST_TEXT = 200_000;
    private static final int MOST_TEMPOS = 8;

    private DocumentCheck() {}

    /** Fields are named as the document's parts: {@code title}, {@code mainLine}, {@code exercises[0]} ... */
    public static List<FieldProblem> problems(EpisodeDocument document) {
        List<FieldProblem> problems = new ArrayList<>(title(document.title()));
        problems.addAll(FieldChecks.text("summary", document.summary(), 2000));
        problems.addAll(FieldChecks.text("notes", document.notes(), LONGEST_TEXT));
        if (document.mainLine().isBlank()) {
            problems.add(FieldProblem.of("mainLine", "catalog.problem.line-missing"));
        }
        problems.addAll(FieldChecks.text("mainLine", document.mainLine().text(), LONGEST_TEXT));
        problems.addAll(exercises(document.exercises()));
        problems.addAll(FieldChecks.text("groove", document.groove().text(), LONGEST_TEXT));
        problems.addAll(rights(document.rights()));
        problems.addAll(facts(document.facts()));
        problems.addAll(settings(document.settings()));
        return problems;
    }

    /** Told in words that are understood where the field itself is not in sight, on the page before a lesson goes out. */
    private static List<FieldProblem> title(String title) {
        return title.isBlank()
                ? List.of(FieldProblem.of("title", "catalog.problem.title-missing"))
                : FieldChecks.line("title", title, 200);
    }

    private static List<FieldProblem> exercises(List<LineSource> exercises) {
        if (exercises.size() > MOST_EXERCISES) {
            return List.of(FieldProblem.of("exercises", "catalog.problem.many", exercises.size(), MOST_EXERCISES));
        }
        return IntStream.range(0, exercises.size())
                .mapToObj(i -> exercise("exercises[" + i + "]", exercises.get(i)))
                .flatMap(List::stream)
                .toList();
    }

    private static List<FieldProblem> exercise(String field, LineSource line) {
        return line.isBlank()
                ? List.of(FieldProblem.of(field, "catalog.problem.exercise-missing"))
                : FieldChecks.text(field, line.text(), LONGEST_TEXT);
    }

    private static List<FieldProblem> rights(Rights rights) {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.text("rights.composer", rights.composer(), 300));
        problems.addAll(FieldChecks.text("rights.credit", rights.credit(), 1000));
        problems.addAll(FieldChecks.text("rights.statement", rights.statement(), 1000));
        var licence = rights.licence();
        problems.addAll(FieldChecks.text("rights.licence.reference", licence.reference(), 300));
        problems.addAll(FieldChecks.text("rights.licence.from", licence.from(), 300));
        if (!licence.isEndReadable()) {
            problems.add(FieldProblem.of("rights.licence.until", "catalog.problem.day", licence.until()));
        }
        return problems;
    }

    private static List<FieldProblem> facts(LessonFacts facts) {
        List<FieldProblem> problems = new ArrayList<>(FieldChecks.text("facts.gear", facts.gear(), 1000));
        if (!facts.video().isEmpty() && FieldChecks.secureAddress(facts.video()).isEmpty()) {
            problems.add(FieldProblem.of("facts.video", "catalog.problem.link", facts.video()));
        }
        if (facts.courses().size() > MOST_COURSES) {
            problems.add(FieldProblem.of(
                    "facts.courses", "catalog.problem.many", facts.courses().size(), MOST_COURSES));
        }
        for (var course : facts.courses()) {
            problems.addAll(FieldChecks.line("facts.courses", course.title(), 200));
            if (FieldChecks.secureAddress(course.address()).isEmpty()) {
                problems.add(FieldProblem.of("facts.courses", "catalog.problem.link", course.address()));
            }
        }
        return problems;
    }

    private static List<FieldProblem> settings(DocumentSettings settings) {
        List<FieldProblem> problems = new ArrayList<>();
        if (FieldChecks.languageTag(settings.language()).isEmpty()) {
            problems.add(FieldProblem.of("settings.language", "catalog.problem.language", settings.language()));
        }
        settings.tempoWords()
                .filter(word -> !DocumentSettings.isPercent(word))
                .forEach(word -> problems.add(FieldProblem.of("settings.tempos", "catalog.problem.tempo", word)));
        if (!settings.rounds().isBlank() && !settings.hasRounds()) {
            problems.add(FieldProblem.of("settings.rounds", "catalog.problem.rounds", settings.rounds()));
        }
        int tempos = settings.tempoPercents().size();
        if (tempos > MOST_TEMPOS) {
            problems.add(FieldProblem.of("settings.tempos", "catalog.problem.many", tempos, MOST_TEMPOS));
        }
        return problems;
    }
}
