package groundbass.publishing;

import static groundbass.publishing.Studio.LINE;
import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.Clearance;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.form.Outcome;
import groundbass.post.EmailAddress;
import groundbass.publishing.Trouble.Kind;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.release.BuildSpec;
import groundbass.release.Built;
import groundbass.release.ReleaseId;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;
import org.junit.jupiter.params.provider.CsvSource;

/** What becomes of what is written, broken or unsettled between a promise and its hour. */
class PromisesTest {
    private static final String LATER = "bar 1\n1-4 E7\n";
    private static final String LATEST = "bar 1\n1-4 E8\n";
    /** A stretch of four frets so low is for few hands (test of the rules: stretch-hard). */
    private static final String UNWISE = "bar 1\n1 E5+A9\n2-4 rest\n";
    /** A stretch of eleven frets so low is for no hand (test of the rules: stretch-beyond-hand). */
    private static final String IMPOSSIBLE = "bar 1\n1 E1+A12\n2-4 rest\n";
    /** 18:00 in Berlin is 17:00 UTC in winter (IANA time zone database, CET = UTC+1). */
    private static final Licence LICENCE = new Licence("No. 12", "A publisher", "");

    private static final LocalDateTime HOUR = LocalDateTime.parse("2026-03-06T18:00");

    private static final Instant AT = Instant.parse("2026-03-06T17:00:00Z");

    /** README.md, first steps of an educator: left alone for ten minutes (one minute, in the last half hour). */
    private static final Duration QUIET = Duration.ofMinutes(10);

    private static final Duration QUIET_NEAR = Duration.ofMinutes(1);
    private static final Duration LAST = Duration.ofMinutes(30);

    private static EpisodeId promised(Studio studio) {
        var id = studio.episode("Rope and Pulley");
        done(studio.promise(id, HOUR));
        studio.buildAll();
        return id;
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsWrittenAfterThePromiseGoesOutAtTheHour(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.write(id, LATER);
            studio.clock.advance(QUIET.minusSeconds(1));
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id))
                    .as("somebody may still be writing")
                    .hasSize(1);
            studio.clock.advance(Duration.ofSeconds(1));
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(2);
            studio.buildAll();
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LATER);
            assertThat(studio.letters()).isEmpty();
        }
    }

    /** Two minutes before the hour, as it happens. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsWrittenMinutesBeforeTheHourGoesOutToo(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.clock.set(AT.minusSeconds(120).toString());
            studio.write(id, LATER);
            studio.clock.advance(QUIET_NEAR);
            studio.publicationJob.pass();
            studio.buildAll();
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LATER);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsWrittenTooLateToBeBuiltFollowsTheHourThatIsKept(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.clock.set(AT.minusSeconds(5).toString());
            studio.write(id, LATER);
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).publishedAt()).contains(AT);
            assertThat(studio.shown(id)).isEqualTo(LINE);
            studio.clock.advance(Duration.ofSeconds(40));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LATER);
        }
    }

    /** A title is mended at the last minute as a line is: what is built goes out at the hour. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aTitleThatIsMendedTooLateToBeBuiltFollowsTheHourThatIsKept(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.clock.set(AT.minusSeconds(5).toString());
            studio.rename(id, "Rope and Pulleys");
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).publishedAt()).contains(AT);
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(id).title()).isEqualTo("Rope and Pulleys");
            assertThat(studio.releases.current(id).orElseThrow().spec().release())
                    .isEqualTo(2);
        }
    }

    /** While a site of several servers is brought to a newer program, one after another. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatANewerServerHasMadeOfAPromiseStaysAndAnOlderMakesNoneBesideIt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            String ours = "\"renderers\":" + BuildSpec.RENDERERS;
            database.jdbi().useHandle(handle -> assertThat(handle.execute(
                            "update release set recipe = replace(recipe, ?, '\"renderers\":9999')", ours))
                    .isOne());
            assertThat(studio.releases.latest(id).orElseThrow().spec().renderers())
                    .isEqualTo(9999);
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsWrittenOnceItIsOutWaitsForTheEducator(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            studio.write(id, LATER);
            studio.clock.advance(Duration.ofDays(1));
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(1);
            assertThat(studio.shown(id)).isEqualTo(LINE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whereTheLatestMayNotGoOutTheLastThatMayDoesAndTheEducatorIsToldOnce(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.write(id, LATER);
            studio.clock.advance(QUIET);
            studio.publicationJob.pass();
            studio.buildAll();
            studio.write(id, "bar 1\n1-4 E58\n");
            studio.clock.set(AT.minus(LAST).minusSeconds(1).toString());
            studio.publicationJob.pass();
            assertThat(studio.letters()).isEmpty();
            studio.clock.advance(Duration.ofSeconds(1));
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.letters()).hasSize(1).first().asString().contains("what you wrote last does not go out");
            assertThat(studio.watch.troubles(studio.look(id)))
                    .extracting(Trouble::kind)
                    .containsExactly(Kind.DRAFT_HELD);
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).publishedAt()).contains(AT);
            assertThat(studio.shown(id)).isEqualTo(LATER);
            assertThat(studio.letters()).hasSize(1);
        }
    }

    /** What was written after it is sound; that it is not built in time does not make the old state so. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatOnlyAnOlderProgramLetPassDoesNotGoOutInThePlaceOfALaterState(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promisedByAnOlderProgram(studio);
            studio.write(id, LATER);
            studio.clock.set(AT.minusSeconds(120).toString());
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            var later = studio.releases.of(id).get(0);
            assertThat(studio.releases.of(id)).hasSize(2);
            Built.failed(studio.releases, later.id(), studio.clock.instant());
            studio.publicationJob.pass();
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.letters())
                    .anySatisfy(subject -> assertThat(subject).contains("could not be built"))
                    .anySatisfy(subject -> assertThat(subject).contains("in danger"));
            studio.clock.advance(Duration.ofMinutes(20));
            comesOutLate(studio, id);
            assertThat(studio.shown(id)).isEqualTo(LATER);
        }
    }

    /** The promised state is sound, so its hour is kept; the educator hears that the later one could not be built. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSoundStateGoesOutAtItsHourWhereTheLaterOneCannotBeBuilt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.write(id, LATER);
            studio.clock.advance(QUIET);
            studio.publicationJob.pass();
            Built.failed(studio.releases, studio.releases.of(id).get(0).id(), studio.clock.instant());
            studio.clock.set(AT.minusSeconds(1).toString());
            studio.publicationJob.pass();
            Built.failed(studio.releases, studio.releases.of(id).get(0).id(), studio.clock.instant());
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).publishedAt()).contains(AT);
            assertThat(studio.shown(id)).isEqualTo(LINE);
            assertThat(studio.letters()).hasSize(1).first().asString().contains("could not be built");
        }
    }

    /** What is to go out is built in one pass and goes out in the next. */
    private static void comesOutLate(Studio studio, EpisodeId id) {
        studio.publicationJob.pass();
        studio.buildAll();
        studio.publicationJob.pass();
        assertThat(studio.find(id).isPublished()).isTrue();
        assertThat(studio.letters()).last().asString().contains("it came out late");
    }

    private static EpisodeId promisedByAnOlderProgram(Studio studio) {
        var id = studio.episode("Rope and Pulley");
        studio.write(id, IMPOSSIBLE);
        var unplayable = studio.look(id).draft().orElseThrow().document();
        var promise = Promise.of(HOUR, Studio.BERLIN, studio.clock.instant());
        done(studio.publisher.enter(
                studio.educator, id, unplayable, Wish.of(Wish.Aim.OUT_THEN, done(promise), Seen.ANYHOW)));
        studio.buildAll();
        return id;
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRemarkThatNobodyAcceptedHoldsTheDraftAlone(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.write(id, UNWISE);
            studio.clock.advance(QUIET);
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(1);
            accept(studio, id);
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(2);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingThatAHandCanHardlyPlayGoesOutUnremarked(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            studio.write(id, UNWISE);
            Outcome<ReleaseId> refused = studio.bringOut(id);
            assertThat(refused.problems()).isNotEmpty();
            accept(studio, id);
            done(studio.bringOut(id));
        }
    }

    /** The button was pressed in two windows. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsAcceptedTwiceAtOnceIsAccepted(Database database) throws Exception {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            for (int i = 1; i <= 9; i++) {
                var digests = List.of("%064x".formatted(i));
                AtOnce.twice(() -> studio.publisher.accept(studio.educator, id, digests));
            }
            int accepted = database.jdbi()
                    .withHandle(handle -> handle.createQuery("select count(*) from accepted_remark")
                            .mapTo(Integer.class)
                            .one());
            assertThat(accepted).isEqualTo(9);
        }
    }

    private static void accept(Studio studio, EpisodeId id) {
        var asking = studio.look(id).checked().asking();
        assertThat(asking).isNotEmpty();
        studio.publisher.accept(
                studio.educator, id, asking.stream().map(LessonRemark::digest).toList());
    }

    /** A permission that has ended when the hour comes keeps the lesson back, and the educator is told. */
    @Test
    void aPermissionThatEndsBeforeTheHourKeepsTheLessonBack() {
        try (var database = BothDatabases.freshH2()) {
            var studio = new Studio(database);
            var id = promised(studio);
            var ended = new Licence(
                    "No. 12", "A publisher", HOUR.toLocalDate().minusDays(1).toString());
            studio.change(id, edit -> edit.rights(new Rights("", "", "Given.", Clearance.GIVEN, ended)));
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.letters()).hasSize(1).first().asString().contains("kept back");
            studio.change(id, edit -> edit.rights(new Rights("", "", "Given.", Clearance.GIVEN, LICENCE)));
            studio.clock.advance(QUIET_NEAR);
            comesOutLate(studio, id);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLessonWhoseRightsAreUnsettledAgainIsKeptBackAndTold(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.change(id, edit -> edit.rights(new Rights("", "", "Asked for.", Clearance.WAITING)));
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.letters()).hasSize(1).first().asString().contains("kept back");
            studio.clock.advance(Duration.ofHours(2));
            studio.change(id, edit -> edit.rights(new Rights("", "", "Given.", Clearance.GIVEN, LICENCE)));
            studio.clock.advance(QUIET_NEAR);
            comesOutLate(studio, id);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFailedBuildIsToldAtOnceTriedUntilItsHourAndAfterIt(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var release = done(studio.promise(id, HOUR));
            Built.failed(studio.releases, release, studio.clock.instant());
            studio.publicationJob.pass();
            assertThat(studio.letters()).hasSize(1).first().asString().contains("could not be built");
            assertThat(studio.outbox.newest(1).get(0).message().text())
                    .contains(
                            "Rope and Pulley", "The program failed at it.", "https://example.org/desk/episodes/" + id);

            studio.clock.set(AT.minus(HourWatch.NEAR).toString());
            studio.publicationJob.pass();
            assertThat(studio.releases.find(release).orElseThrow().isUnderWay()).isTrue();
            assertThat(studio.letters()).hasSize(2).last().asString().contains("in danger");
            studio.clock.set(AT.plusSeconds(180).toString());
            Built.failed(studio.releases, release, studio.clock.instant());
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            studio.clock.advance(Duration.ofMinutes(15));
            studio.publicationJob.pass();
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isTrue();
            assertThat(studio.letters()).hasSize(3).last().asString().contains("it came out late");
            assertThat(studio.outbox.newest(1).get(0).message().text()).contains("18 minutes after its hour");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionThatCannotBeBuiltIsToldOnceAndTriedAgain(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();
            studio.write(id, LATER);
            var correction = done(studio.correct(id));
            Built.failed(studio.releases, correction, studio.clock.instant());
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LINE);
            studio.clock.advance(Duration.ofMinutes(1));
            studio.publicationJob.pass();
            Built.failed(studio.releases, correction, studio.clock.instant());
            studio.publicationJob.pass();
            assertThat(studio.letters()).hasSize(1).first().asString().contains("could not be built");
            assertThat(studio.outbox.newest(1).get(0).message().text())
                    .contains("Rope and Pulley", "The program failed at it.", "https://example.org/desk/episodes/" + id)
                    .doesNotContain("\n\n\n");

            studio.clock.advance(Duration.ofMinutes(2));
            studio.publicationJob.pass();
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LATER);
        }
    }

    /** A clock that was two days ahead while a build failed, and was set right. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPauseFromAClockThatWasAheadIsOverWhenTheClockIsRight(Database database) {
        try (database) {
            var studio = new Studio(database);
            var release = done(studio.promise(studio.episode("Rope and Pulley"), HOUR));
            Built.failed(studio.releases, release, studio.clock.instant().plus(Duration.ofDays(2)));
            studio.publicationJob.pass();
            assertThat(studio.releases.find(release).orElseThrow().isUnderWay()).isTrue();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingOfAPromiseTakenBackGoesOutWithTheNext(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            done(studio.withdraw(id));
            studio.write(id, LATER);
            done(studio.promise(id, HOUR));
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LATER);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsPublishedAtOnceIsWhatStoodThere(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.bringOut(id));
            studio.write(id, LATEST);
            studio.clock.advance(Duration.ofMinutes(30));
            studio.publicationJob.pass();
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.shown(id)).isEqualTo(LINE);
            assertThat(studio.letters()).as("no hour was promised").isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyElseIsTold(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.change(id, edit -> edit.rights(new Rights("", "", "Asked for.", Clearance.WAITING)));
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            assertThat(studio.outbox.newest(100)).isNotEmpty().allSatisfy(letter -> assertThat(
                            letter.message().to().value())
                    .isEqualTo("desk@example.org"));
        }
    }

    /** The one list of checkpoints is asked at the hour too, also what is not in the lesson; the desk says it, and one letter. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatFailsAtTheHourIsToldToTheEducatorAndNotToWhoWaitsForTheLesson(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            var series = studio.find(id).series();
            var reader = new EmailAddress("reader@example.net");
            studio.newsReaders.agree(new Ask(series, reader, Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
            database.jdbi().useHandle(handle -> handle.execute("delete from setting where name = 'imprint.name'"));
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.watch.troubles(studio.look(id)))
                    .extracting(Trouble::kind)
                    .containsExactly(Kind.KEPT_BACK);
            assertThat(studio.letters()).hasSize(1).first().asString().contains("kept back");
            assertThat(studio.outbox.newest(1).get(0).message().text())
                    .contains("https://example.org/desk/episodes/" + id + "/preflight");
            assertThat(studio.newsRound.pass()).isZero();
            assertThat(studio.outbox.to(reader)).isEmpty();
        }
    }

    /** A newer program may fail at what an older one let pass; its educator hears of it, and can take the hour back. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFixedStateThatCannotBeJudgedIsKeptBackAndTold(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = promised(studio);
            studio.failsAtLessons = true;
            studio.clock.set(AT.toString());
            studio.publicationJob.pass();
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isFalse();
            assertThat(studio.watch.troubles(studio.look(id)))
                    .extracting(Trouble::kind)
                    .containsExactly(Kind.KEPT_BACK);
            assertThat(studio.letters()).hasSize(1).first().asString().contains("kept back");
            assertThat(studio.look(id).checked().holding())
                    .extracting(remark -> remark.message().key())
                    .containsExactly("publishing.remark.unjudged");
            done(studio.withdraw(id));
        }
    }

    /** The hour is noon; times of day. */
    @ParameterizedTest
    @CsvSource({
        "08:00:00, 08:09:59, false",
        "08:00:00, 08:10:00, true",
        "11:31:00, 11:31:59, false",
        "11:31:00, 11:32:00, true",
        "11:59:58, 11:59:59, false",
        "11:59:58, 12:00:00, true",
        "12:00:01, 12:00:30, false",
        "12:00:01, 12:01:01, true"
    })
    void aDraftIsSettledOnceItWasLeftAlone(String saved, String now, boolean settled) {
        assertThat(Promises.isSettled(at(saved), at("12:00:00"), at(now))).isEqualTo(settled);
    }

    private static Instant at(String time) {
        return Instant.parse("2026-03-06T" + time + "Z");
    }
}
