package groundbass.publishing;

import static groundbass.publishing.Studio.BERLIN;
import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.catalog.episode.EpisodeState.Unscheduled;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesId;
import groundbass.document.Clearance;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.text.Messages;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** A series that goes out on Wednesdays at five in Berlin from the fourth of March 2026 on, and what is done with its hours. */
class TimetableTest {
    private static final LocalDate FIRST = LocalDate.parse("2026-03-04");
    private static final List<Seen> UNSEEN = List.of(Seen.ANYHOW, Seen.ANYHOW);

    private final ConcurrentLinkedQueue<List<FieldProblem>> problems = new ConcurrentLinkedQueue<>();

    private record Table(Studio studio, Rhythms rhythms, Timetable hours) {
        static Table of(Database database) {
            var studio = new Studio(database);
            var rhythms = new Rhythms(database.jdbi(), studio.audit);
            studio.episode("Begun");
            var table = new Table(studio, rhythms, new Timetable(studio.parts, studio.publisher, rhythms));
            done(rhythms.save(studio.educator, table.series(), new RhythmForm(FIRST.toString(), "17:00", "1", "")));
            return table;
        }

        SeriesId series() {
            return studio.catalog.open(studio.educator, Deed.KEEP).get(0).id();
        }

        EpisodeId promised(String title, int week) {
            var id = studio.episode(title);
            done(hours.promise(studio.educator, id, hour(week), seen(id)));
            return id;
        }

        Seen seen(EpisodeId id) {
            return studio.seen(id);
        }

        LocalDateTime hourOf(EpisodeId id) {
            return ((Scheduled) studio.find(id).state()).local();
        }

        List<String> audited() {
            return studio.audit.latest(100).stream().map(entry -> entry.what()).toList();
        }
    }

    private static LocalDateTime hour(int week) {
        return FIRST.plusWeeks(week).atTime(17, 0);
    }

    private static void refused(Outcome<?> outcome, String key) {
        assertThat(outcome.problems()).extracting(FieldProblem::key).containsExactly(key);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void twoLessonsChangePlacesAndKeepNumbersAndAddresses(Database database) {
        try (database) {
            var table = Table.of(database);
            var rope = table.promised("Rope and Pulley", 0);
            var water = table.promised("Slack Water", 2);
            var before = table.studio.find(rope);
            var seen = List.of(table.seen(rope), table.seen(water));
            done(table.hours.swap(table.studio.educator, rope, water, seen));
            assertThat(table.hourOf(rope)).isEqualTo(hour(2));
            assertThat(table.hourOf(water)).isEqualTo(hour(0));
            assertThat(table.studio.find(rope))
                    .extracting(episode -> episode.number(), episode -> episode.slug())
                    .containsExactly(before.number(), before.slug());
            assertThat(table.audited()).contains("episode.swapped");
            refused(table.hours.swap(table.studio.educator, rope, water, seen), "publishing.problem.meanwhile");
            table.studio.buildAll();
            // 17:00 in Berlin is 16:00 UTC in winter (IANA time zone database)
            table.studio.clock.set("2026-03-04T16:00:00Z");
            table.studio.publicationJob.pass();
            assertThat(table.studio.find(water).isPublished()).isTrue();
            assertThat(table.studio.find(rope).isPublished()).isFalse();
            refused(table.hours.swap(table.studio.educator, rope, water, UNSEEN), "publishing.problem.meanwhile");
        }
    }

    /** A permission that is good on the one day may have ended on the other. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lessonsDoNotChangePlacesWhereAPermissionEndsBetween(Database database) {
        try (database) {
            var table = Table.of(database);
            var rope = table.promised("Rope and Pulley", 0);
            var water = table.promised("Slack Water", 2);
            permitUntil(table, rope, FIRST.plusWeeks(2).minusDays(1));
            var there = List.of(table.seen(rope), table.seen(water));
            var back = List.of(table.seen(water), table.seen(rope));
            var problem =
                    table.hours.swap(table.studio.educator, rope, water, there).problems();
            assertThat(problem).singleElement().satisfies(one -> assertThat(Messages.of(Locale.ENGLISH)
                            .say(one.key(), one.args().toArray()))
                    .contains("Rope and Pulley", "2026-03-17", "2026-03-18"));
            refused(
                    table.hours.swap(table.studio.educator, water, rope, back),
                    problem.get(0).key());
            assertThat(table.hourOf(rope)).isEqualTo(hour(0));
            assertThat(table.hourOf(water)).isEqualTo(hour(2));
            permitUntil(table, rope, FIRST.plusWeeks(2));
            done(table.hours.swap(table.studio.educator, rope, water, there));
        }
    }

    private static void permitUntil(Table table, EpisodeId id, LocalDate last) {
        var licence = new Licence("No. 12", "A publisher", last.toString());
        table.studio.change(id, edit -> edit.rights(new Rights("", "", "By permission.", Clearance.GIVEN, licence)));
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLessonMovesToAFreeHourAndToNoOther(Database database) {
        try (database) {
            var table = Table.of(database);
            var who = table.studio.educator;
            var rope = table.promised("Rope and Pulley", 0);
            var water = table.promised("Slack Water", 1);
            refused(table.hours.promise(who, rope, hour(1), table.seen(rope)), "publishing.problem.hour.taken");
            refused(
                    table.hours.promise(who, rope, hour(2).plusHours(1), table.seen(rope)),
                    "publishing.problem.hour.none");
            refused(
                    table.hours.promise(who, rope, hour(2).plusDays(1), table.seen(rope)),
                    "publishing.problem.hour.none");
            var stale = table.seen(rope);
            done(table.hours.promise(who, rope, hour(2), stale));
            done(table.hours.promise(who, rope, hour(2), stale)); // pressed twice
            refused(table.hours.promise(who, rope, hour(3), stale), "publishing.problem.meanwhile");
            assertThat(table.hourOf(rope)).isEqualTo(hour(2));
            assertThat(table.hourOf(water)).isEqualTo(hour(1));
            assertThat(table.studio.releases.of(rope)).as("built once").hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anHourIsSkippedAndTakenBack(Database database) {
        try (database) {
            var table = Table.of(database);
            var who = table.studio.educator;
            var rope = table.promised("Rope and Pulley", 0);
            refused(table.hours.skip(who, table.series(), FIRST), "publishing.problem.hour.taken");
            refused(table.hours.skip(who, table.series(), FIRST.plusDays(1)), "publishing.problem.hour.none");
            done(table.hours.skip(who, table.series(), FIRST.plusWeeks(1)));
            done(table.hours.skip(who, table.series(), FIRST.plusWeeks(1)));
            assertThat(table.rhythms.of(table.series()).orElseThrow().breaks()).containsExactly(FIRST.plusWeeks(1));
            refused(table.hours.promise(who, rope, hour(1), table.seen(rope)), "publishing.problem.hour.break");
            done(table.hours.resume(who, table.series(), FIRST.plusWeeks(1)));
            done(table.hours.resume(who, table.series(), FIRST.plusWeeks(1)));
            assertThat(table.rhythms.of(table.series()).orElseThrow().breaks()).isEmpty();
            assertThat(table.audited())
                    .filteredOn(what -> what.startsWith("rhythm."))
                    .containsExactly("rhythm.resumed", "rhythm.skipped", "rhythm.changed");
        }
    }

    /** 17:00 in Berlin is 16:00 UTC in winter (IANA time zone database); the page was opened before. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anHourThatHasStruckIsNeitherSkippedNorTaken(Database database) {
        try (database) {
            var table = Table.of(database);
            var rope = table.promised("Rope and Pulley", 0);
            var water = table.studio.episode("Slack Water");
            table.studio.clock.set("2026-03-04T15:59:59Z");
            refused(table.hours.skip(table.studio.educator, table.series(), FIRST), "publishing.problem.hour.taken");
            table.studio.clock.set("2026-03-04T16:00:00Z"); // due, and not out yet
            refused(table.hours.skip(table.studio.educator, table.series(), FIRST), "publishing.problem.hour.over");
            refused(
                    table.hours.promise(table.studio.educator, water, hour(0), table.seen(water)),
                    "publishing.problem.hour.taken");
            done(table.studio.withdraw(rope));
            var late = table.hours.promise(table.studio.educator, water, hour(0), table.seen(water));
            refused(late, "publishing.problem.hour.passed");
            assertThat(late.problems()).extracting(FieldProblem::field).containsExactly(Seen.STANDING);
            assertThat(table.rhythms.of(table.series()).orElseThrow().breaks()).isEmpty();
        }
    }

    /** Two windows promise two lessons for one hour: one has it, the other is told. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anHourIsGivenToOneLesson(Database database) throws Exception {
        try (database) {
            var table = Table.of(database);
            for (int week = 0; week < 4; week++) {
                var lessons = new ConcurrentLinkedQueue<>(
                        List.of(table.studio.episode("One " + week), table.studio.episode("Other " + week)));
                var ids = List.copyOf(lessons);
                var hour = hour(week);
                problems.clear();
                AtOnce.twice(() -> problems.add(table.hours
                        .promise(table.studio.educator, lessons.remove(), hour, Seen.ANYHOW)
                        .problems()));
                assertThat(problems.stream().flatMap(List::stream).map(FieldProblem::key))
                        .containsExactly("publishing.problem.hour.taken");
                assertThat(ids.stream().map(id -> table.studio.find(id).state()))
                        .filteredOn(Unscheduled.class::isInstance)
                        .hasSize(1);
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lessonsOfOthersAndOfOtherSeriesAreNotThere(Database database) {
        try (database) {
            var table = Table.of(database);
            var rope = table.promised("Rope and Pulley", 0);
            var stranger = EducatorId.next();
            refused(table.hours.promise(stranger, rope, hour(1), Seen.ANYHOW), "catalog.problem.gone");
            refused(table.hours.skip(stranger, table.series(), FIRST.plusWeeks(1)), "catalog.problem.gone");
            refused(table.hours.swap(stranger, rope, rope, UNSEEN), "catalog.problem.gone");
            assertThat(table.hourOf(rope)).isEqualTo(hour(0));
            assertThat(BERLIN.getId())
                    .isEqualTo(
                            ((Scheduled) table.studio.find(rope).state()).zone().getId());
        }
    }
}
