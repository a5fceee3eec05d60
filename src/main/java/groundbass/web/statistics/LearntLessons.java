package groundbass.web.statistics;

import groundbass.audience.statistics.AtAge;
import groundbass.audience.statistics.LessonAges;
import groundbass.audience.visit.VisitKind;
import groundbass.audience.visit.VisitNumbers;
import groundbass.audience.visit.VisitsOfLesson;
import groundbass.catalog.episode.Episode;
import groundbass.web.view.Reader;
import groundbass.web.view.TechniqueWords;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * The latest lessons at one age that all of them have reached: 28 days, or 7 as long as few are that old.
 *
 * @param days that age
 * @param lessons those that have reached it
 * @param young how many of the latest have not
 */
record LearntLessons(int days, List<LearntLesson> lessons, int young) {
    /** So many at most: two years of weeks. What was taught before says little about what comes next. */
    static final int MOST = 104;
    /** Fewer say less than more that are younger. */
    private static final int FEW = 4;

    private static final int MONTH = LessonAges.MONTH / LessonAges.DAY;
    private static final int WEEK = LessonAges.WEEK / LessonAges.DAY;

    LearntLessons {
        lessons = List.copyOf(lessons);
    }

    /** A lesson, what was downloaded of it, and who came to it. */
    private record Known(Episode episode, AgeChart.Row ages, VisitsOfLesson visits, List<String> techniques) {
        Optional<LearntLesson> at(Function<AgeChart.Row, Optional<AtAge>> age, Function<VisitNumbers, Long> numbers) {
            return age.apply(ages)
                    .map(taken -> new LearntLesson(
                            episode.level(),
                            techniques,
                            numbers.apply(visits.of(VisitKind.VIEW)),
                            taken.students(),
                            numbers.apply(visits.of(VisitKind.PLAY)),
                            numbers.apply(visits.of(VisitKind.WHOLE)),
                            numbers.apply(visits.of(VisitKind.LOOP))));
        }
    }

    static LearntLessons of(StatisticsServices services, OpenSeries series, Reader reader) {
        var known = known(services, series, reader);
        var month = all(known, AgeChart.Row::month, VisitNumbers::firstMonth);
        if (month.size() >= FEW) {
            return new LearntLessons(MONTH, month, known.size() - month.size());
        }
        var week = all(known, AgeChart.Row::week, VisitNumbers::firstWeek);
        return new LearntLessons(WEEK, week, known.size() - week.size());
    }

    private static List<LearntLesson> all(
            List<Known> known, Function<AgeChart.Row, Optional<AtAge>> age, Function<VisitNumbers, Long> numbers) {
        return known.stream().flatMap(one -> one.at(age, numbers).stream()).toList();
    }

    private static List<Known> known(StatisticsServices services, OpenSeries series, Reader reader) {
        var latest = series.boards().stream()
                .flatMap(board -> board.episodes().stream())
                .sorted(Comparator.comparing(
                                (Episode episode) -> episode.publishedAt().orElseThrow())
                        .reversed())
                .limit(MOST)
                .toList();
        var ids = latest.stream().map(Episode::id).toList();
        var ages = services.ages(latest);
        var visits = services.visits().of(ids);
        var techniques = services.index().techniques(ids);
        return IntStream.range(0, latest.size())
                .mapToObj(i -> new Known(
                        latest.get(i),
                        ages.get(i),
                        visits.get(i),
                        TechniqueWords.of(techniques.getOrDefault(ids.get(i), List.of()), reader)))
                .toList();
    }
}
