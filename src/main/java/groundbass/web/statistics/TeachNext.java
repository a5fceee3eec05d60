package groundbass.web.statistics;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import java.util.stream.Collectors;

/**
 * Lessons by what they teach, those first of which students took the most. Each row is the average of its lessons, so that what
 * was taught often does not count for more.
 */
public record TeachNext(List<Row> rows) {
    public TeachNext {
        rows = List.copyOf(rows);
    }

    /**
     * The lessons with one trait.
     *
     * @param views, students, plays on the average, rounded
     * @param whole, looped of a hundred who played, how many played all of it, and repeated a passage
     * @param share how long its bar is, of a hundred, beside the longest
     */
    public record Row(
            String name, int lessons, long views, long students, long plays, long whole, long looped, long share) {
        private static Row of(String name, List<LearntLesson> lessons, double most) {
            double students = average(lessons, LearntLesson::students);
            long plays = sum(lessons, LearntLesson::plays);
            return new Row(
                    name,
                    lessons.size(),
                    Math.round(average(lessons, LearntLesson::views)),
                    Math.round(students),
                    Math.round(average(lessons, LearntLesson::plays)),
                    percent(sum(lessons, LearntLesson::whole), plays),
                    percent(sum(lessons, LearntLesson::looped), plays),
                    most == 0 ? 0 : Math.round(100 * students / most));
        }
    }

    /** @param traits of a lesson: it stands in a row of each */
    static TeachNext by(Function<LearntLesson, List<String>> traits, List<LearntLesson> lessons) {
        Map<String, List<LearntLesson>> groups = lessons.stream()
                .flatMap(lesson -> traits.apply(lesson).stream().map(trait -> Map.entry(trait, lesson)))
                .collect(Collectors.groupingBy(
                        Map.Entry::getKey,
                        LinkedHashMap::new,
                        Collectors.mapping(Map.Entry::getValue, Collectors.toList())));
        double most = groups.values().stream()
                .mapToDouble(group -> average(group, LearntLesson::students))
                .max()
                .orElse(0);
        return new TeachNext(groups.entrySet().stream()
                .sorted(Comparator.comparingDouble((Map.Entry<String, List<LearntLesson>> group) ->
                                average(group.getValue(), LearntLesson::students))
                        .reversed()
                        .thenComparing(Map.Entry::getKey))
                .map(group -> Row.of(group.getKey(), group.getValue(), most))
                .toList());
    }

    private static double average(List<LearntLesson> lessons, ToLongFunction<LearntLesson> number) {
        return (double) sum(lessons, number) / lessons.size();
    }

    private static long sum(List<LearntLesson> lessons, ToLongFunction<LearntLesson> number) {
        return lessons.stream().mapToLong(number).sum();
    }

    private static long percent(long part, long all) {
        return all == 0 ? 0 : Math.round(100.0 * part / all);
    }

    /** What most students took, if anybody took anything. */
    public Optional<Row> taken() {
        return rows.stream().findFirst().filter(row -> row.students() > 0);
    }

    /** What was most often played to its end. */
    public Optional<Row> finished() {
        return rows.stream().filter(row -> row.whole() > 0).max(Comparator.comparingLong(Row::whole));
    }

    /** Where passages were repeated most often. */
    public Optional<Row> repeated() {
        return rows.stream().filter(row -> row.looped() > 0).max(Comparator.comparingLong(Row::looped));
    }
}
