package groundbass.audience.news;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.Leaving;
import groundbass.audience.student.LinkState;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.post.EmailAddress;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class NewsTest {
    private static final String WORDING = "Yes, write to me.";

    /** An audience and a series whose news it may get. */
    private record Room(Audience audience, Database database, Series series) {
        static Room of(Database database) {
            var audience = new Audience(database);
            var owner = TrialEducators.create(
                    database.jdbi(), audience.clock, "A. Teacher", "teacher@example.org", "four strings!");
            var series = new SeriesCatalog(database.jdbi(), audience.audit, audience.clock)
                    .create(owner.id(), new SeriesForm("Low Tide", "", "", "UTC"))
                    .result()
                    .orElseThrow();
            return new Room(audience, database, series);
        }

        Ask ask(EmailAddress email) {
            return new Ask(series.id(), email, Locale.GERMAN, WORDING, AskedOn.SERIES);
        }

        SecretToken asked(EmailAddress email) {
            audience.newsRequests.ask(series, ask(email));
            audience.clock.advance(Duration.ofMillis(1));
            return audience.mailed();
        }

        void agreed(EmailAddress email) {
            assertThat(audience.newsRequests.agree(asked(email))).contains(series.id());
        }

        int announce() {
            return database.jdbi()
                    .inTransaction(handle -> audience.newsQueue.announce(handle, series.id(), Audience.FIRST));
        }

        List<EmailAddress> waiting() {
            return audience.newsQueue.waiting(100).stream()
                    .map(QueuedLetter::email)
                    .toList();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyWhoeverHasTheLetterCanAgreeAndOnce(Database database) {
        try (database) {
            var room = Room.of(database);
            var requests = room.audience.newsRequests;
            var token = room.asked(ANNA);
            assertThat(requests.peek(token)).isEqualTo(LinkState.VALID);
            assertThat(room.announce()).as("asked is not agreed").isZero();

            assertThat(requests.agree(token)).contains(room.series.id());
            assertThat(requests.agree(token)).isEmpty();
            assertThat(requests.peek(token)).isEqualTo(LinkState.USED);
            assertThat(requests.peek(SecretToken.next())).isEqualTo(LinkState.UNKNOWN);
            assertThat(room.announce()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkRunsOut(Database database) {
        try (database) {
            var room = Room.of(database);
            var token = room.asked(ANNA);
            room.audience.clock.advance(NewsRequests.VALID);
            assertThat(room.audience.newsRequests.peek(token)).isEqualTo(LinkState.EXPIRED);
            assertThat(room.audience.newsRequests.agree(token)).isEmpty();
            assertThat(room.audience.newsReaders.of(ANNA)).isEmpty();
        }
    }

    /** Who sends has to be able to show the consent: Regulation (EU) 2016/679, article 7 paragraph 1. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatWasAgreedToIsKeptWordForWord(Database database) {
        try (database) {
            var room = Room.of(database);
            Instant asked = room.audience.clock.instant();
            var token = room.asked(ANNA);
            room.audience.clock.advance(Duration.ofHours(2));
            Instant agreed = room.audience.clock.instant();
            room.audience.newsRequests.agree(token);
            assertThat(room.audience.newsReaders.of(ANNA)).singleElement().satisfies(reader -> {
                assertThat(reader.wording()).isEqualTo(WORDING);
                assertThat(reader.askedOn()).isEqualTo(AskedOn.SERIES);
                assertThat(reader.askedAt()).isEqualTo(asked);
                assertThat(reader.agreedAt()).isEqualTo(agreed);
                assertThat(reader.locale()).isEqualTo(Locale.GERMAN);
                assertThat(reader.endedAt()).isEmpty();
            });
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyIsFloodedByOthersWhoTypeTheirAddress(Database database) {
        try (database) {
            var room = Room.of(database);
            for (int i = 0; i < 10; i++) {
                room.audience.newsRequests.ask(room.series, room.ask(ANNA));
            }
            assertThat(room.audience.outbox.to(ANNA)).hasSize(NewsRequests.MOST_PER_HOUR);
            room.audience.clock.advance(Duration.ofMinutes(61));
            room.audience.newsRequests.ask(room.series, room.ask(ANNA));
            assertThat(room.audience.outbox.to(ANNA)).hasSize(NewsRequests.MOST_PER_HOUR + 1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyIsEnteredTwice(Database database) {
        try (database) {
            var room = Room.of(database);
            room.agreed(ANNA);
            room.agreed(ANNA);
            room.agreed(BERT);
            assertThat(room.announce()).isEqualTo(2);
            assertThat(room.announce()).isZero();
            assertThat(room.waiting()).containsExactlyInAnyOrder(ANNA, BERT);
            var letter = room.audience.newsQueue.waiting(1).get(0);
            database.jdbi().useTransaction(handle -> {
                assertThat(room.audience.newsQueue.take(handle, letter)).isTrue();
                assertThat(room.audience.newsQueue.take(handle, letter)).isFalse();
            });
            assertThat(room.waiting()).hasSize(1).doesNotContain(letter.email());
            assertThat(room.announce()).isZero();
            assertThat(room.audience.newsQueue.told(Audience.FIRST)).isEqualTo(new NewsQueue.Told(1, 1));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void itEndsAtOnceAndCanBeginAgain(Database database) {
        try (database) {
            var room = Room.of(database);
            room.agreed(ANNA);
            room.announce();
            var readers = room.audience.newsReaders;
            String key = readers.key(readers.of(ANNA).get(0).id());
            assertThat(readers.find(key + "x")).isEmpty();
            var reader = readers.find(key).orElseThrow();
            readers.end(reader.id());
            readers.end(reader.id());
            assertThat(room.waiting()).isEmpty();
            assertThat(room.announce()).isZero();
            assertThat(readers.find(key).orElseThrow().endedAt()).isPresent();

            room.agreed(ANNA);
            assertThat(readers.find(key).orElseThrow().endedAt()).isEmpty();
            assertThat(readers.count(room.series.id())).isEqualTo(new NewsReaders.Count(1, 0));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anAddressThatWasRefusedGetsNothing(Database database) {
        try (database) {
            var room = Room.of(database);
            room.agreed(ANNA);
            room.agreed(BERT);
            room.announce();
            database.jdbi()
                    .useHandle(handle -> handle.execute(
                            "insert into refused_address (email, refused_at, reply) values (?, ?, ?)",
                            ANNA,
                            room.audience.clock.instant(),
                            "550 no such user"));
            assertThat(room.waiting()).containsExactly(BERT);
            assertThat(room.audience.newsReaders.count(room.series.id())).isEqualTo(new NewsReaders.Count(1, 1));
            assertThat(room.audience.outbox.refusal(ANNA).orElseThrow().reply()).isEqualTo("550 no such user");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nothingStaysOfWhoLeavesAndLittleOfWhoEndedIt(Database database) {
        try (database) {
            var room = Room.of(database);
            var student = room.audience.student(ANNA);
            room.agreed(ANNA);
            room.agreed(BERT);
            room.asked(ANNA);
            room.announce();
            new Leaving(database.jdbi(), room.audience.students, room.audience.newsReaders).forget(student);
            for (String table : List.of("news_reader", "news_request", "news_letter", "outbox", "student")) {
                assertThat(room.audience.contents(table)).as(table).doesNotContain(ANNA.value());
            }
            assertThat(room.waiting()).containsExactly(BERT);

            var readers = room.audience.newsReaders;
            readers.end(room.series.id(), BERT);
            room.audience.clock.advance(NewsReaders.PROOF_KEPT.minusSeconds(1));
            readers.purge();
            assertThat(readers.of(BERT)).hasSize(1);
            room.audience.clock.advance(Duration.ofSeconds(2));
            readers.purge();
            assertThat(readers.of(BERT)).isEmpty();
            assertThat(room.audience.contents("news_request")).doesNotContain(BERT.value());
        }
    }
}
