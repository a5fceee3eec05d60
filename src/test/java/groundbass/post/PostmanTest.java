package groundbass.post;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class PostmanTest {
    private static final EmailAddress READER = new EmailAddress("reader@example.org");

    private final SettableClock clock = SettableClock.at("2026-03-02T10:00:00Z");
    private final List<String> bag = Collections.synchronizedList(new ArrayList<>());
    private final Sender willing = (id, message) -> {
        bag.add(message.subject() + ": " + message.text());
        return Delivery.SENT;
    };
    private final Sender refusing = (id, message) -> {
        throw new SendingFailed("421 busy\r\ntry later");
    };

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void sendsALetterOnceAndErasesItsText(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            var postman = new Postman(database.jdbi(), willing, clock, Runnable::run);
            MessageId id = outbox.put(letter("One"));

            assertThat(postman.deliverDue()).isEqualTo(1);
            assertThat(postman.deliverDue()).isZero();
            assertThat(bag).containsExactly("One: Länger als eine Zeile\nü");
            OutboxMail sent = outbox.find(id).orElseThrow();
            assertThat(sent.delivery()).contains(Delivery.SENT);
            assertThat(sent.message().text()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterGoesDownWithItsTransaction(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            assertThatThrownBy(() -> database.jdbi().useTransaction(handle -> {
                        outbox.put(letter("Never"));
                        throw new IllegalStateException("something else failed");
                    }))
                    .hasMessage("something else failed");
            assertThat(new Postman(database.jdbi(), willing, clock, Runnable::run).deliverDue())
                    .isZero();
            assertThat(outbox.newest(10)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void triesAgainAfterGrowingPausesAndThenGivesUp(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            var postman = new Postman(database.jdbi(), refusing, clock, Runnable::run);
            MessageId id = outbox.put(letter("Refused"));

            // each pause four times the one before, about six hours in all (ours, no source)
            var minutes = List.of(1, 4, 16, 64, 256, 1024);
            for (int attempt = 1; attempt <= minutes.size(); attempt++) {
                assertThat(outbox.find(id).orElseThrow().delivery()).isEmpty();
                postman.deliverDue();
                postman.deliverDue();
                assertThat(outbox.find(id).orElseThrow().attempts()).isEqualTo(attempt);
                clock.advance(Duration.ofMinutes(minutes.get(attempt - 1)).minusSeconds(1));
                postman.deliverDue();
                assertThat(outbox.find(id).orElseThrow().attempts()).isEqualTo(attempt);
                clock.advance(Duration.ofSeconds(1));
            }
            OutboxMail failed = outbox.find(id).orElseThrow();
            assertThat(failed.delivery()).contains(Delivery.FAILED);
            assertThat(failed.lastError()).contains("421 busy try later");
            clock.advance(Duration.ofDays(2));
            assertThat(new Postman(database.jdbi(), willing, clock, Runnable::run).deliverDue())
                    .isZero();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneLetterThatFailsDoesNotHoldTheOthers(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            for (String subject : List.of("One", "Two", "Three", "Four")) outbox.put(letter(subject));
            Sender choosy = (id, message) -> {
                if (message.subject().equals("Two")) throw new SendingFailed("550 no such reader");
                if (message.subject().equals("Three")) throw new IllegalStateException("unforeseen");
                return willing.send(id, message);
            };
            assertThat(new Postman(database.jdbi(), choosy, clock, Runnable::run).deliverDue())
                    .isEqualTo(4);
            assertThat(bag).hasSize(2).noneMatch(text -> text.startsWith("T"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterThatHangsDelaysNoOther(Database database) throws InterruptedException {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            var hangs = new CountDownLatch(1);
            var letThrough = new CountDownLatch(1);
            Sender dripping = (id, message) -> {
                if (message.subject().equals("Slow")) {
                    hangs.countDown();
                    await(letThrough);
                }
                return willing.send(id, message);
            };
            var threads = Executors.newCachedThreadPool();
            var oneEnded = new CountDownLatch(1);
            var postman = new Postman(
                    database.jdbi(),
                    dripping,
                    clock,
                    way -> threads.execute(() -> {
                        way.run();
                        oneEnded.countDown();
                    }));
            outbox.put(letter("Slow"));
            assertThat(postman.deliverDue()).isEqualTo(1);
            await(hangs);
            MessageId quick = outbox.put(letter("Quick"));
            assertThat(postman.deliverDue()).isEqualTo(1);
            await(oneEnded);
            assertThat(outbox.find(quick).orElseThrow().delivery()).contains(Delivery.SENT);
            assertThat(bag).hasSize(1);
            letThrough.countDown();
            threads.shutdown();
            assertThat(threads.awaitTermination(1, TimeUnit.MINUTES)).isTrue();
            assertThat(bag).hasSize(2);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void noMoreThanSixteenAreOnTheirWayAtOnce(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            IntStream.range(0, 20).forEach(i -> outbox.put(letter("Letter " + i)));
            var ways = new ArrayDeque<Runnable>();
            var postman = new Postman(database.jdbi(), willing, clock, ways::add);
            assertThat(postman.deliverDue()).isEqualTo(16);
            assertThat(postman.deliverDue()).isZero();
            ways.poll().run();
            assertThat(postman.deliverDue()).isEqualTo(1);
            while (!ways.isEmpty()) ways.poll().run();
            postman.deliverDue();
            while (!ways.isEmpty()) ways.poll().run();
            assertThat(bag).hasSize(20);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterRefusedForGoodIsSetAsideAtOnce(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            Sender strict = (id, message) -> {
                throw SendingFailed.forGood(new IllegalArgumentException("550 no such reader"));
            };
            MessageId id = outbox.put(letter("Refused"));
            var postman = new Postman(database.jdbi(), strict, clock, Runnable::run);
            postman.deliverDue();
            clock.advance(Duration.ofDays(1));
            assertThat(postman.deliverDue()).isZero();
            OutboxMail refused = outbox.find(id).orElseThrow();
            assertThat(refused.delivery()).contains(Delivery.REFUSED);
            assertThat(refused.attempts()).isEqualTo(1);
            assertThat(refused.lastError().orElseThrow()).contains("550 no such reader");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anAddressThatIsRefusedIsRememberedUntilALetterReachesIt(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            Sender strict = (id, message) -> {
                throw SendingFailed.forThisAddress(new IllegalArgumentException("550 no such reader"));
            };
            for (String subject : List.of("One", "Two")) outbox.put(letter(subject));
            assertThat(outbox.refusal(READER)).isEmpty();
            new Postman(database.jdbi(), strict, clock, Runnable::run).deliverDue();
            assertThat(outbox.refusal(READER).orElseThrow().reply()).contains("550 no such reader");
            assertThat(outbox.refusal(READER).orElseThrow().refusedAt()).isEqualTo(clock.instant());

            outbox.put(letter("Three").withHtml("<p>Three"));
            new Postman(database.jdbi(), willing, clock, Runnable::run).deliverDue();
            assertThat(outbox.refusal(READER)).isEmpty();
            assertThat(outbox.newest(3))
                    .filteredOn(letter -> letter.delivery().equals(Optional.of(Delivery.SENT)))
                    .singleElement()
                    .satisfies(sent -> assertThat(sent.message().html()).isEmpty());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterThatHasLeftIsSentWhateverFailsAfterwards(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            database.jdbi().useHandle(handle -> handle.execute("alter table refused_address rename to elsewhere"));
            MessageId id = outbox.put(letter("Sent"));
            new Postman(database.jdbi(), willing, clock, Runnable::run).deliverDue();
            OutboxMail sent = outbox.find(id).orElseThrow();
            assertThat(sent.delivery()).contains(Delivery.SENT);
            assertThat(sent.lastError()).isEmpty();
        }
    }

    private static void await(CountDownLatch latch) {
        try {
            assertThat(latch.await(1, TimeUnit.MINUTES)).isTrue();
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSecondPostmanLeavesAClaimedLetterAlone(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            outbox.put(letter("Once"));
            var second = new Postman(database.jdbi(), willing, clock, Runnable::run);
            var first = new Postman(
                    database.jdbi(),
                    (id, message) -> {
                        second.deliverDue();
                        return willing.send(id, message);
                    },
                    clock,
                    Runnable::run);
            first.deliverDue();
            assertThat(bag).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void waitsForItsHourAndDropsWhatCameTooLate(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            var postman = new Postman(database.jdbi(), willing, clock, Runnable::run);
            var later = clock.instant().plus(Duration.ofHours(2));
            MessageId announced = outbox.put(
                    new Mail(READER, "Later", "x", later, Optional.empty(), Optional.empty(), Optional.empty()));
            MessageId link =
                    outbox.put(letter("Link").uselessAfter(clock.instant().plus(Duration.ofMinutes(20))));

            clock.advance(Duration.ofMinutes(20));
            assertThat(postman.deliverDue()).isZero();
            assertThat(outbox.find(link).orElseThrow().delivery()).contains(Delivery.USELESS);
            clock.advance(Duration.ofMinutes(100));
            assertThat(postman.deliverDue()).isEqualTo(1);
            assertThat(outbox.find(announced).orElseThrow().delivery()).contains(Delivery.SENT);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void withoutAMailServerLettersStayReadableOnTheDesk(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            MessageId id = outbox.put(letter("Desk"));
            new Postman(database.jdbi(), new DevelopmentSender(), clock, Runnable::run).deliverDue();
            OutboxMail letter = outbox.newest(10).get(0);
            assertThat(letter.id()).isEqualTo(id);
            assertThat(letter.delivery()).contains(Delivery.ON_DESK);
            assertThat(letter.message().text()).isEqualTo("Länger als eine Zeile\nü");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void keepsWhatLeftForThirtyDays(Database database) {
        try (database) {
            var outbox = new Outbox(database.jdbi(), clock);
            outbox.put(letter("Old"));
            new Postman(database.jdbi(), willing, clock, Runnable::run).deliverDue();
            MessageId waiting = outbox.put(letter("Still waiting"));
            clock.advance(Outbox.KEPT);
            assertThat(outbox.purge()).isZero();
            clock.advance(Duration.ofSeconds(1));
            assertThat(outbox.purge()).isEqualTo(1);
            assertThat(outbox.newest(10)).extracting(OutboxMail::id).containsExactly(waiting);
        }
    }

    @Test
    void pausesGrowFourfold() {
        assertThat(List.of(1, 2, 3, 4, 5))
                .extracting(attempt -> Postman.pauseAfter(attempt).toMinutes())
                .containsExactly(1L, 4L, 16L, 64L, 256L);
    }

    private Mail letter(String subject) {
        return Mail.of(READER, subject, "Länger als eine Zeile\nü", clock.instant());
    }
}
