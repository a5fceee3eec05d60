package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState.Scheduled;
import groundbass.publishing.Trouble.Kind;
import groundbass.publishing.Wish.Aim;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.store.AskedStatements;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** How much is asked of the database, and how often a lesson is read through, to say how lessons stand. */
class LessonLookTest {
    private static final String LATER = "bar 1\n1-4 E7\n";
    /** A stretch of eleven frets so low is for no hand (test of the rules: stretch-beyond-hand). */
    private static final String IMPOSSIBLE = "bar 1\n1 E1+A12\n2-4 rest\n";
    /** 18:00 in Berlin is 17:00 UTC in winter (IANA time zone database, CET = UTC+1). */
    private static final LocalDateTime HOUR = LocalDateTime.parse("2026-03-06T18:00");

    private static final Instant AT = Instant.parse("2026-03-06T17:00:00Z");

    private static List<String> asked(Studio studio, Database database, List<EpisodeId> lessons) {
        return AskedStatements.during(database.jdbi(), () -> look(studio, lessons));
    }

    private static void look(Studio studio, List<EpisodeId> lessons) {
        var site = studio.publisher.look();
        for (var id : lessons) {
            var look = site.at(studio.educator, studio.find(id));
            assertThat(look.latest()).isPresent();
            assertThat(look.checked().differs()).isPresent();
            assertThat(studio.watch.troubles(look)).isEmpty();
            assertThat(look.differs()).isPresent();
        }
    }

    /** Each has an hour that is near, and something written since that goes out with it: of such a lesson all is asked. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneMoreLessonCostsNoMoreThanWhatIsItsOwn(Database database) {
        try (database) {
            var studio = new Studio(database);
            var lessons = new ArrayList<EpisodeId>();
            for (int i = 0; i < 4; i++) {
                var id = studio.episode("Lesson " + i);
                done(studio.promise(id, HOUR.plusMinutes(i)));
                studio.write(id, LATER);
                lessons.add(id);
            }
            studio.buildAll();
            studio.clock.set(AT.minus(Promises.LEAD).plusSeconds(300).toString());
            int one = asked(studio, database, lessons.subList(0, 1)).size();
            int four = asked(studio, database, lessons).size();
            assertThat(four - one)
                    .as("for each its row (twice), draft, releases, what is fixed, and what was accepted")
                    .isPositive()
                    .isLessThanOrEqualTo(3 * 6);
            assertThat(asked(studio, database, lessons))
                    .filteredOn(sql -> sql.contains("setting"))
                    .hasSizeBetween(1, 2);
            assertThat(asked(studio, database, lessons))
                    .filteredOn(sql -> sql.contains("outbox"))
                    .hasSize(1);
        }
    }

    /** The pass asks every few seconds, for as long as the lesson is kept back. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatKeepsALessonBackIsFoundOnce(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            studio.write(id, IMPOSSIBLE); // an earlier version of the program let it pass
            var unplayable = studio.look(id).draft().orElseThrow().document();
            var promise = Promise.of(HOUR, Studio.BERLIN, studio.clock.instant());
            var wish = Wish.of(Aim.OUT_THEN, done(promise), Seen.ANYHOW);
            done(studio.publisher.enter(studio.educator, id, unplayable, wish));
            studio.buildAll();
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.watch.troubles(studio.look(id)))
                    .extracting(Trouble::kind)
                    .containsExactly(Kind.KEPT_BACK);
            var first = firstInTheWay(studio, id);
            studio.publicationJob.pass();
            assertThat(firstInTheWay(studio, id))
                    .as("the very remark of the pass before")
                    .isSameAs(first);
            done(studio.withdraw(id));
            studio.publicationJob.pass();
            done(studio.publisher.enter(
                    studio.educator,
                    id,
                    unplayable,
                    Wish.of(
                            Aim.OUT_THEN,
                            done(Promise.of(HOUR.plusDays(1), Studio.BERLIN, studio.clock.instant())),
                            Seen.ANYHOW)));
            studio.clock.set(AT.plusSeconds(86_400).toString());
            assertThat(firstInTheWay(studio, id))
                    .as("forgotten, once it was promised no more")
                    .isNotSameAs(first)
                    .isEqualTo(first);
        }
    }

    private static LessonRemark firstInTheWay(Studio studio, EpisodeId id) {
        var look = studio.look(id);
        var promise = (Scheduled) look.episode().state();
        return studio.watch
                .promises()
                .stand(look, promise)
                .orElseThrow()
                .keptBack()
                .get(0);
    }
}
