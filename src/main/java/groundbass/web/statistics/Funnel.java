package groundbass.web.statistics;

import groundbass.audience.visit.VisitKind;
import groundbass.audience.visit.VisitNumbers;
import groundbass.audience.visit.VisitsOfLesson;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * From opening a lesson to following a course, a row for each step: how many visitors came so far, at equal ages. Downloads are no
 * visitors: of those the row counts each.
 */
public record Funnel(List<Row> rows) {
    public Funnel {
        rows = List.copyOf(rows);
    }

    /**
     * A step.
     *
     * @param key of its name in the bundles
     * @param day, week, month empty where the lesson is not that old yet
     * @param share how many of a hundred of the longest row
     */
    public record Row(
            String key, Optional<Long> day, Optional<Long> week, Optional<Long> month, long inAll, long share) {}

    /** A step, before it is known how long the others are. */
    private record Step(String key, VisitNumbers numbers) {
        static Step of(VisitsOfLesson visits, VisitKind kind) {
            return new Step(kind.key(), visits.of(kind));
        }

        Row row(AgeChart.Row ages, long most) {
            return new Row(
                    key,
                    ages.day().map(reached -> numbers.firstDay()),
                    ages.week().map(reached -> numbers.firstWeek()),
                    ages.month().map(reached -> numbers.firstMonth()),
                    numbers.inAll(),
                    most == 0 ? 0 : Math.round(100.0 * numbers.inAll() / most));
        }
    }

    /**
     * @param ages which ages the lesson has reached, and its downloads until then
     * @param downloads all of them
     */
    static Funnel of(VisitsOfLesson visits, AgeChart.Row ages, long downloads) {
        var taken = new VisitNumbers(
                ages.day().map(at -> at.downloads()).orElse(0L),
                ages.week().map(at -> at.downloads()).orElse(0L),
                ages.month().map(at -> at.downloads()).orElse(0L),
                downloads);
        var steps = new ArrayList<>(Stream.of(VisitKind.VIEW, VisitKind.SIGN_IN)
                .map(kind -> Step.of(visits, kind))
                .toList());
        steps.add(new Step("statistics.downloads", taken));
        Stream.of(VisitKind.PLAY, VisitKind.WHOLE, VisitKind.LOOP, VisitKind.COURSE)
                .map(kind -> Step.of(visits, kind))
                .forEach(steps::add);
        long most =
                steps.stream().mapToLong(step -> step.numbers().inAll()).max().orElse(0);
        return new Funnel(steps.stream().map(step -> step.row(ages, most)).toList());
    }

    /** Whether anything happened at all. */
    public boolean isEmpty() {
        return rows.stream().allMatch(row -> row.inAll() == 0);
    }
}
