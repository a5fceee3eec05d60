package groundbass.web.program;

import groundbass.catalog.episode.DocumentCheck;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.document.Level;
import groundbass.document.Licence;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.FieldProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What is typed of a lesson, as programs read and write it: as typed, right or wrong. Words for the walkthrough, the
 * script and the bars of recordings stay as they are. A member that is missing says what a new lesson would.
 *
 * @param level one of {@code beginner}, {@code intermediate}, {@code advanced}
 * @param language a tag (BCP 47)
 * @param line the main line, as line text
 * @param notes Markdown
 * @param tempos percentages, with spaces between them
 */
record DraftView(
        String title,
        String level,
        String summary,
        String language,
        String line,
        List<Exercise> exercises,
        String notes,
        Drums drums,
        Instruments instruments,
        String tempos,
        String rounds,
        String gear,
        String video,
        List<Course> courses,
        Credits rights) {
    /** A further line. */
    record Exercise(String name, String line) {
        Exercise {
            name = Objects.requireNonNullElse(name, "");
            line = Objects.requireNonNullElse(line, "");
        }
    }

    /**
     * The drums under the line.
     *
     * @param grid as typed; where it is blank the ready one of that name, or one that fits the metre
     * @param feel in percent, how much they are played as people play
     */
    record Drums(String name, String grid, String feel) {
        Drums {
            name = Objects.requireNonNullElse(name, "");
            grid = Objects.requireNonNullElse(grid, "");
            feel = Objects.requireNonNullElse(feel, GrooveSource.FEELS.get(0));
        }
    }

    /**
     * What the band plays on.
     *
     * @param bass what the bass is heard through
     */
    record Instruments(String bass, String chords) {
        Instruments {
            bass = Objects.requireNonNullElse(bass, GrooveSource.BASSES.get(0));
            chords = Objects.requireNonNullElse(chords, GrooveSource.CHORDS.get(0));
        }
    }

    /** Where the lesson leads on to. */
    record Course(String title, String address) {
        Course {
            title = Objects.requireNonNullElse(title, "");
            address = Objects.requireNonNullElse(address, "");
        }
    }

    /**
     * Whose music it is.
     *
     * @param clearance one of {@code open}, {@code own}, {@code free}, {@code waiting}, {@code given}
     */
    record Credits(String composer, String credit, String statement, String clearance, Permission licence) {
        Credits {
            composer = Objects.requireNonNullElse(composer, "");
            credit = Objects.requireNonNullElse(credit, "");
            statement = Objects.requireNonNullElse(statement, "");
            clearance = Objects.requireNonNullElse(clearance, Clearance.OPEN.word());
            licence = Objects.requireNonNullElse(licence, new Permission("", "", ""));
        }
    }

    /** By what somebody else's music may be published: {@link Licence} as it is typed. */
    record Permission(String reference, String from, String until) {
        Permission {
            reference = Objects.requireNonNullElse(reference, "");
            from = Objects.requireNonNullElse(from, "");
            until = Objects.requireNonNullElse(until, "");
        }

        static Permission of(Licence licence) {
            return new Permission(licence.reference(), licence.from(), licence.until());
        }

        Licence licence() {
            return new Licence(reference, from, until);
        }
    }

    DraftView {
        title = Objects.requireNonNullElse(title, "");
        level = Objects.requireNonNullElse(level, Level.BEGINNER.code());
        summary = Objects.requireNonNullElse(summary, "");
        language = Objects.requireNonNullElse(language, DocumentSettings.USUAL.language());
        line = Objects.requireNonNullElse(line, "");
        exercises = Objects.requireNonNullElse(exercises, List.of());
        notes = Objects.requireNonNullElse(notes, "");
        drums = Objects.requireNonNullElse(drums, new Drums("", "", null));
        instruments = Objects.requireNonNullElse(instruments, new Instruments(null, null));
        tempos = Objects.requireNonNullElse(tempos, DocumentSettings.USUAL.tempos());
        rounds = Objects.requireNonNullElse(rounds, DocumentSettings.USUAL.rounds());
        gear = Objects.requireNonNullElse(gear, "");
        video = Objects.requireNonNullElse(video, "");
        courses = Objects.requireNonNullElse(courses, List.of());
        rights = Objects.requireNonNullElse(rights, new Credits("", "", "", null, null));
    }

    static DraftView of(EpisodeDocument document) {
        var groove = document.groove();
        var facts = document.facts();
        var rights = document.rights();
        return new DraftView(
                document.title(),
                document.level().code(),
                document.summary(),
                document.settings().language(),
                document.mainLine().text(),
                document.exercises().stream()
                        .map(line -> new Exercise(line.name(), line.text()))
                        .toList(),
                document.notes(),
                new Drums(groove.name(), groove.text(), groove.feel()),
                new Instruments(groove.bass(), groove.chords()),
                document.settings().tempos(),
                document.settings().rounds(),
                facts.gear(),
                facts.video(),
                facts.courses().stream()
                        .map(course -> new Course(course.title(), course.address()))
                        .toList(),
                new Credits(
                        rights.composer(),
                        rights.credit(),
                        rights.statement(),
                        rights.clearance().word(),
                        Permission.of(rights.licence())));
    }

    /** A document that says this; refuses with 422 a word that there is none of, and more parts than a lesson has. */
    EpisodeDocument in(EpisodeDocument before) {
        refuseOtherWords();
        refuseTooMany(before);
        return before.edit()
                .title(title)
                .level(Level.parse(level).orElseThrow())
                .summary(summary)
                .notes(notes)
                .mainLine(new LineSource(before.mainLine().name(), line))
                .exercises(exercises.stream()
                        .map(one -> new LineSource(one.name(), one.line()))
                        .toList())
                .groove(new GrooveSource(
                        drums.name(), drums.grid(), drums.feel(), instruments.bass(), instruments.chords()))
                .facts(new LessonFacts(
                        video.strip(), gear.strip(), pointers(), before.facts().chapters()))
                .rights(new Rights(
                        rights.composer(),
                        rights.credit(),
                        rights.statement(),
                        Clearance.parse(rights.clearance()).orElseThrow(),
                        rights.licence().licence()))
                .settings(new DocumentSettings(
                        language, tempos, rounds, before.settings().naming()))
                .done();
    }

    private List<CoursePointer> pointers() {
        return courses.stream()
                .map(course -> new CoursePointer(
                        course.title().strip(), course.address().strip()))
                .toList();
    }

    private void refuseOtherWords() {
        var problems = new ArrayList<FieldProblem>();
        word("level", Level.parse(level)).ifPresent(problems::add);
        word("rights.clearance", Clearance.parse(rights.clearance())).ifPresent(problems::add);
        word("drums.feel", drums.feel(), GrooveSource.FEELS).ifPresent(problems::add);
        word("instruments.bass", instruments.bass(), GrooveSource.BASSES).ifPresent(problems::add);
        word("instruments.chords", instruments.chords(), GrooveSource.CHORDS).ifPresent(problems::add);
        if (!problems.isEmpty()) {
            throw Refusal.members(problems);
        }
    }

    /** What is there already, from the desk or of old, may stay. */
    private void refuseTooMany(EpisodeDocument before) {
        var problems = new ArrayList<FieldProblem>();
        count("exercises", exercises, before.exercises(), DocumentCheck.MOST_EXERCISES)
                .ifPresent(problems::add);
        count("courses", courses, before.facts().courses(), DocumentCheck.MOST_COURSES)
                .ifPresent(problems::add);
        if (!problems.isEmpty()) {
            throw Refusal.members(problems);
        }
    }

    private static Optional<FieldProblem> count(String member, List<?> now, List<?> before, int most) {
        return now.size() > Math.max(most, before.size())
                ? Optional.of(FieldProblem.of(member, "catalog.problem.many", now.size(), most))
                : Optional.empty();
    }

    private static Optional<FieldProblem> word(String member, String word, List<String> words) {
        return word(member, Optional.of(word).filter(words::contains));
    }

    private static Optional<FieldProblem> word(String member, Optional<?> known) {
        return known.isPresent() ? Optional.empty() : Optional.of(FieldProblem.of(member, "program.refused.word"));
    }
}
