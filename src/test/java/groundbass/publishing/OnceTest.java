package groundbass.publishing;

import static groundbass.publishing.Studio.BERLIN;
import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.catalog.episode.EpisodeState;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.release.ReleaseNote;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Buttons that are pressed twice, two windows, and an hour that strikes meanwhile: what is wished happens once. */
class OnceTest {
    private static final String LATER = "bar 1\n1-4 E7\n";
    /** 18:00 in Berlin is 17:00 UTC in winter (IANA time zone database, CET = UTC+1). */
    private static final LocalDateTime HOUR = LocalDateTime.parse("2026-03-06T18:00");

    private static long audited(Studio studio, String what) {
        return studio.audit.latest(100).stream()
                .filter(entry -> entry.what().equals(what))
                .count();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void twoPressesAtOnceBringItOutOnce(Database database) throws Exception {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var series = studio.find(id).series();
            studio.newsReaders.agree(
                    new Ask(series, new EmailAddress("reader@example.net"), Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
            var seen = studio.seen(id);
            AtOnce.twice(() -> done(studio.publisher.bringOut(studio.educator, id, seen)));
            var promised = studio.find(id).state();
            done(studio.publisher.bringOut(studio.educator, id, seen)); // while it is being built
            assertThat(studio.find(id).state())
                    .as("the moment of the first press")
                    .isEqualTo(promised);
            assertThat(studio.releases.of(id)).hasSize(1);
            assertThat(audited(studio, "episode.promised")).isEqualTo(1);
            studio.buildAll();
            AtOnce.twice(studio.publicationJob::pass);
            assertThat(studio.find(id).isPublished()).isTrue();
            assertThat(studio.newsRound.pass() + studio.newsRound.pass()).isEqualTo(1);
        }
    }

    /** The page still shows "Publish now"; pressing it corrects nothing, for nobody has said what would be corrected. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWentOutMeanwhileIsNotBroughtOutAgain(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.promise(id, HOUR));
            var seen = studio.seen(id);
            studio.buildAll();
            studio.clock.set("2026-03-06T17:00:00Z");
            studio.publicationJob.pass();
            studio.write(id, LATER);
            assertThat(studio.publisher.bringOut(studio.educator, id, seen).problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("publishing.problem.meanwhile.out");
            var next = HOUR.plusDays(7);
            assertThat(studio.publisher
                            .schedule(studio.educator, id, next, BERLIN, seen)
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("publishing.problem.meanwhile.out");
            assertThat(studio.publisher.withdraw(studio.educator, id, seen).problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("publishing.problem.meanwhile");
            assertThat(studio.releases.of(id)).hasSize(1);
            assertThat(studio.shown(id)).isEqualTo(Studio.LINE);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aWindowThatDoesNotKnowOfAPromiseMovesNone(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var seen = studio.seen(id);
            done(studio.publisher.schedule(studio.educator, id, HOUR, BERLIN, seen));
            var promised = studio.find(id).state();
            done(studio.publisher.schedule(studio.educator, id, HOUR, BERLIN, seen)); // pressed twice
            assertThat(audited(studio, "episode.promised")).isEqualTo(1);
            for (var outcome : List.of(
                    studio.publisher.schedule(studio.educator, id, HOUR.plusDays(7), BERLIN, seen),
                    studio.publisher.bringOut(studio.educator, id, seen))) {
                assertThat(outcome.problems())
                        .extracting(FieldProblem::key)
                        .containsExactly("publishing.problem.meanwhile");
            }
            assertThat(studio.find(id).state()).isEqualTo(promised);
            done(studio.publisher.schedule(studio.educator, id, HOUR.plusDays(7), BERLIN, studio.seen(id)));
            assertThat(((EpisodeState.Scheduled) studio.find(id).state()).local())
                    .isEqualTo(HOUR.plusDays(7));
        }
    }

    /** A form of a page that never was: nothing of the lesson is out that could be corrected. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsNotOutIsNotCorrected(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var note = new ReleaseNote("Count 1 is at the seventh fret.", false);
            assertThat(studio.publisher
                            .correct(studio.educator, id, note, Seen.ANYHOW)
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("publishing.problem.meanwhile");
            assertThat(studio.releases.of(id)).isEmpty();
        }
    }

    /** Another window threw it away between the look at the draft and the lock. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWasThrownAwayMeanwhileIsToldAsGone(Database database) {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            var cleared = done(studio.publisher.cleared(studio.educator, id));
            done(studio.bin.throwAway(studio.educator, studio.find(id)));
            var promise = Promise.now(BERLIN, studio.clock.instant());
            assertThat(studio.publisher
                            .enter(studio.educator, id, cleared, Wish.of(Wish.Aim.OUT_NOW, promise, Seen.ANYHOW))
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("catalog.problem.gone");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionThatIsPressedTwiceIsOne(Database database) throws Exception {
        try (database) {
            var studio = new Studio(database);
            var id = studio.episode("Rope and Pulley");
            done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();
            studio.write(id, LATER);
            var seen = studio.seen(id);
            var note = new ReleaseNote("Count 1 is at the seventh fret.", false);
            AtOnce.twice(() -> done(studio.publisher.correct(studio.educator, id, note, seen)));
            assertThat(studio.releases.of(id)).hasSize(2);
            assertThat(audited(studio, "episode.promised")).isEqualTo(2);
        }
    }
}
