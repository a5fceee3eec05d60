package groundbass.catalog.series;

import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A rhythm as typed.
 *
 * @param first the first day, as 2030-05-01; blank for no rhythm
 * @param breaks days, apart by spaces or lines
 */
public record RhythmForm(String first, String time, String weeks, String breaks) {
    private static final int MOST_BREAKS = 200;
    private static final RhythmForm NONE = new RhythmForm("", "17:00", "1", "");

    /** The form that shows a rhythm as it is. */
    public static RhythmForm of(Optional<ReleaseRhythm> rhythm) {
        return rhythm.map(RhythmForm::of).orElse(NONE);
    }

    private static RhythmForm of(ReleaseRhythm rhythm) {
        return new RhythmForm(
                rhythm.first().toString(),
                rhythm.time().toString(),
                Integer.toString(rhythm.weeks()),
                rhythm.breaks().stream().map(LocalDate::toString).collect(Collectors.joining("\n")));
    }

    /** Names what it says, so that a window learns that the rhythm was changed since it was opened. */
    public String base() {
        return words(first + " " + time + " " + weeks + " " + breaks).collect(Collectors.joining(" "));
    }

    /** What was typed; no rhythm where no first day is. */
    public Outcome<Optional<ReleaseRhythm>> read() {
        if (first.isBlank()) {
            return Outcome.done(Optional.empty());
        }
        var day = day(first);
        var hour = hour(time);
        var each = weeks(weeks);
        var problems = new ArrayList<FieldProblem>();
        if (day.isEmpty()) {
            problems.add(FieldProblem.of("first", "rhythm.problem.day", first.strip()));
        }
        if (hour.isEmpty()) {
            problems.add(FieldProblem.of("time", "rhythm.problem.time", time.strip()));
        }
        if (each.isEmpty()) {
            problems.add(FieldProblem.of("weeks", "rhythm.problem.weeks", weeks.strip(), ReleaseRhythm.MOST_WEEKS));
        }
        words(breaks)
                .filter(word -> day(word).isEmpty())
                .findFirst()
                .ifPresent(word -> problems.add(FieldProblem.of("breaks", "rhythm.problem.day", word)));
        if (words(breaks).count() > MOST_BREAKS) {
            problems.add(FieldProblem.of("breaks", "rhythm.problem.breaks", MOST_BREAKS));
        }
        return problems.isEmpty()
                ? Outcome.done(Optional.of(new ReleaseRhythm(day.get(), hour.get(), each.get(), days())))
                : Outcome.refused(List.copyOf(problems));
    }

    private TreeSet<LocalDate> days() {
        return words(breaks).map(word -> day(word).orElseThrow()).collect(Collectors.toCollection(TreeSet::new));
    }

    private static Stream<String> words(String text) {
        return Stream.of(text.strip().split("[\\s,;]+")).filter(word -> !word.isEmpty());
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return Optional.of(LocalDate.parse(text.strip())).filter(day -> day.getYear() < 10_000);
        } catch (DateTimeException noDay) {
            return Optional.empty();
        }
    }

    private static Optional<LocalTime> hour(String text) {
        try {
            return Optional.of(LocalTime.parse(text.strip()).truncatedTo(ChronoUnit.MINUTES));
        } catch (DateTimeException noHour) {
            return Optional.empty();
        }
    }

    private static Optional<Integer> weeks(String text) {
        return Optional.of(text.strip())
                .filter(figure -> figure.matches("[1-" + ReleaseRhythm.MOST_WEEKS + "]"))
                .map(Integer::valueOf);
    }
}
