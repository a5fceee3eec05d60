package groundbass.audience.visit;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.ROBOT;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Audience.VISITOR;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.audience.Story;
import groundbass.audience.download.Requester;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/**
 * Counted by hand, of the two lessons of {@link Story}: the first came out on Monday, 2026-03-02, at 16:00 UTC, the second a
 * week later.
 *
 * <pre>
 *    when              who       what                                     days since
 *  1 Mon 03-02 17:00   Anna      opens 1                                  0
 *  2 Mon 03-02 17:10   Anna      plays half of it, repeats bars 3 and 4   0
 *  3 Mon 03-02 17:20   Anna      plays on: all of it, repeats bar 4       0
 *  4 Tue 03-03 15:00   Anna      opens it once more, plays a quarter      counted at 1: within a day
 *  5 Tue 03-03 17:30   Anna      opens it, plays one bar                  1
 *  6 Tue 03-03 18:00   a visitor opens 1, twice, plays an exercise whole  1
 *    Tue 03-03 18:00   a robot and an educator do the same                nowhere
 *  7 Mon 03-09 16:30   Bert      signs in to go to 1, opens it            7
 *  8 Mon 03-09 16:40   Bert      follows a course of 1, twice             7
 *  9 Mon 03-30 16:00   a visitor opens 1                                  28
 * 10 Sun 04-26 15:00   Bert      opens 1                                  54, kept under 28
 * 11 Mon 04-27 16:00   a visitor opens 1                                  56
 * 12 Mon 03-09 17:00   Bert      opens 2                                  0 of the second
 * </pre>
 */
class LessonVisitsTest {
    private static final String COURSE = "https://courses.example/slap";

    private final Sitting half = played(2, 3, 4);
    private final Sitting whole = played(4, 4);

    private static Sitting played(int quarters, Integer... looped) {
        return new Sitting(1, List.of(new PlayedLine("line", quarters, Set.of(looped))), List.of());
    }

    private static Episode lesson(Database database, EpisodeId id) {
        return new Episodes(database.jdbi()).find(id).orElseThrow();
    }

    private void tell(Database database, Story story, LessonVisits visits) {
        var first = lesson(database, FIRST);
        var anna = new Requester.Known(story.anna);
        var bert = new Requester.Known(story.bert);
        story.at("2026-03-02T17:00:00Z");
        visits.viewed(first, anna);
        story.at("2026-03-02T17:10:00Z");
        visits.sat(first, half, anna);
        story.at("2026-03-02T17:20:00Z");
        visits.sat(first, whole, anna);
        visits.write();
        story.at("2026-03-03T15:00:00Z");
        visits.viewed(first, anna);
        visits.sat(first, played(1), anna);
        story.at("2026-03-03T17:30:00Z");
        visits.viewed(first, anna);
        visits.sat(first, played(0), anna);
        story.at("2026-03-03T18:00:00Z");
        var exercise = new Sitting(1, List.of(new PlayedLine("exercise-1", 4, Set.of())), List.of());
        for (var who : List.of(VISITOR, VISITOR, ROBOT, new Requester.AtTheDesk())) {
            visits.viewed(first, who);
            visits.sat(first, exercise, who);
        }
        story.at("2026-03-09T16:30:00Z");
        visits.signedIn(first, bert);
        visits.viewed(first, bert);
        story.at("2026-03-09T16:40:00Z");
        visits.sat(first, new Sitting(1, List.of(), List.of(COURSE)), bert);
        visits.sat(first, new Sitting(1, List.of(), List.of(COURSE)), bert);
        story.at("2026-03-09T17:00:00Z");
        visits.viewed(lesson(database, SECOND), bert);
        story.at("2026-03-30T16:00:00Z");
        visits.viewed(first, VISITOR);
        story.at("2026-04-26T15:00:00Z");
        visits.viewed(first, bert);
        story.at("2026-04-27T16:00:00Z");
        visits.viewed(first, VISITOR);
        visits.write();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void eachCountsOnceInADayAtItsAge(Database database) {
        try (database) {
            var story = new Story(database);
            tell(database, story, new LessonVisits(database.jdbi(), story.audience.visitors, story.audience.clock));
            var figures = new VisitFigures(database.jdbi());
            var visits = figures.of(List.of(SECOND, FIRST));
            assertThat(visits.get(0).numbers()).isEqualTo(Map.of(VisitKind.VIEW, new VisitNumbers(1, 1, 1, 1)));
            assertThat(visits.get(1).of(VisitKind.VIEW)).isEqualTo(new VisitNumbers(1, 3, 4, 7));
            assertThat(visits.get(1).of(VisitKind.SIGN_IN)).isEqualTo(new VisitNumbers(0, 0, 1, 1));
            assertThat(visits.get(1).of(VisitKind.PLAY)).isEqualTo(new VisitNumbers(1, 3, 3, 3));
            assertThat(visits.get(1).of(VisitKind.WHOLE)).isEqualTo(new VisitNumbers(1, 1, 1, 1));
            assertThat(visits.get(1).of(VisitKind.LOOP)).isEqualTo(new VisitNumbers(1, 1, 1, 1));
            assertThat(visits.get(1).of(VisitKind.COURSE)).isEqualTo(new VisitNumbers(0, 0, 1, 1));
            assertThat(figures.parts(FIRST))
                    .containsExactly(
                            new PlayedPart("exercise-1", 0, 1),
                            new PlayedPart("exercise-1", 1, 1),
                            new PlayedPart("exercise-1", 2, 1),
                            new PlayedPart("exercise-1", 3, 1),
                            new PlayedPart("exercise-1", 4, 1),
                            new PlayedPart("line", 0, 2), // Anna on two days
                            new PlayedPart("line", 1, 1),
                            new PlayedPart("line", 2, 1),
                            new PlayedPart("line", 3, 1),
                            new PlayedPart("line", 4, 1));
            assertThat(figures.loops(FIRST))
                    .containsExactly(new LoopedBar(1, "line", 3, 1), new LoopedBar(1, "line", 4, 1));
            assertThat(figures.courses(FIRST)).containsExactly(new CourseClicks(COURSE, 1));
            assertThat(rows(database)).isEqualTo(12);
        }
    }

    /** Views at 0, 1, 7, 28 and 56; plays at 0 and 1; whole, loop, sign-in and course at one age each; the second lesson. */
    private static long rows(Database database) {
        return database.jdbi().withHandle(handle -> handle.createQuery("select count(*) from visit_sum")
                .mapTo(Long.class)
                .one());
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void ofWhoeverCameNothingIsStored(Database database) {
        try (database) {
            var story = new Story(database);
            tell(database, story, new LessonVisits(database.jdbi(), story.audience.visitors, story.audience.clock));
            for (String table : List.of("visit_sum", "played_part", "repeated_bar", "course_click")) {
                assertThat(story.audience.contents(table))
                        .contains(FIRST.value())
                        .doesNotContain(story.anna.value(), story.bert.value(), "192.0.2.7", "A browser");
            }
        }
    }

    /** Whoever makes up programs adds a class to a lesson and no more, and nobody of another network counts the less for it. */
    @Test
    void visitorsOfOneNetworkCountUpToABound() {
        try (var database = BothDatabases.freshH2()) {
            var story = new Story(database);
            var visits = new LessonVisits(database.jdbi(), story.audience.visitors, story.audience.clock);
            var first = lesson(database, FIRST);
            for (int i = 0; i < Counted.MOST_OF_NETWORK + 40; i++) {
                visits.viewed(first, new Requester.Anonymous("2001:db8::" + i, "2001:db8::/64", "Program " + i));
            }
            visits.viewed(first, new Requester.Anonymous("2001:db8::0", "2001:db8::/64", "Program 0"));
            visits.viewed(first, VISITOR);
            visits.viewed(first, new Requester.Known(story.anna));
            visits.write();
            var figures = new VisitFigures(database.jdbi()).of(List.of(FIRST)).get(0);
            assertThat(figures.of(VisitKind.VIEW).inAll()).isEqualTo(Counted.MOST_OF_NETWORK + 2);
        }
    }

    /** A correction may put a bar before: the number that a bar had on the sheet is told with its release. */
    @Test
    void repeatedBarsAreToldByRelease() {
        try (var database = BothDatabases.freshH2()) {
            var story = new Story(database);
            var visits = new LessonVisits(database.jdbi(), story.audience.visitors, story.audience.clock);
            var first = lesson(database, FIRST);
            var anna = new Requester.Known(story.anna);
            visits.sat(first, played(1, 3), anna);
            visits.sat(first, new Sitting(2, played(1, 3).lines(), List.of()), anna);
            visits.sat(first, new Sitting(2, played(1, 3).lines(), List.of()), new Requester.Known(story.bert));
            visits.write();
            assertThat(new VisitFigures(database.jdbi()).loops(FIRST))
                    .containsExactly(new LoopedBar(2, "line", 3, 2), new LoopedBar(1, "line", 3, 1));
        }
    }

    /** Two nodes, or one that was not there for a while, add to the same sums. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatCouldNotBeWrittenIsWrittenTheNextTimeAndOfAThrownAwayLessonNothing(Database database) {
        try (database) {
            var story = new Story(database);
            var jdbi = database.jdbi();
            var one = new LessonVisits(jdbi, story.audience.visitors, story.audience.clock);
            var other = new LessonVisits(jdbi, story.audience.visitors, story.audience.clock);
            story.at("2026-03-10T10:00:00Z");
            one.viewed(lesson(database, FIRST), VISITOR);
            other.viewed(lesson(database, FIRST), new Requester.Known(story.anna));
            other.viewed(lesson(database, SECOND), VISITOR);
            jdbi.useHandle(handle -> handle.execute("alter table visit_sum rename to away"));
            assertThatThrownBy(one::write).isInstanceOf(RuntimeException.class);
            jdbi.useHandle(handle -> handle.execute("alter table away rename to visit_sum"));
            jdbi.useHandle(handle -> handle.execute("delete from episode where id = ?", SECOND.value()));
            one.close();
            other.write();
            other.write();
            assertThat(new VisitFigures(jdbi).of(List.of(FIRST)).get(0).of(VisitKind.VIEW))
                    .isEqualTo(new VisitNumbers(0, 0, 2, 2));
            assertThat(rows(database)).isEqualTo(1);
        }
    }
}
