package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.post.Delivery;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.post.Postman;
import groundbass.post.Sender;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class NewsRoundTest {
    private final List<EmailAddress> reached = Collections.synchronizedList(new ArrayList<>());
    private final Sender willing = (id, letter) -> {
        reached.add(letter.to());
        return Delivery.SENT;
    };

    private static EmailAddress reader(int number) {
        return new EmailAddress("reader" + number + "@example.net");
    }

    private static void agree(Studio studio, EmailAddress email, Locale locale) {
        var series = studio.catalog.open(studio.educator, Deed.KEEP).get(0);
        studio.newsReaders.agree(new Ask(series.id(), email, locale, "Yes.", AskedOn.ACCOUNT));
    }

    private static EpisodeId out(Studio studio, String title) {
        var id = studio.episode(title);
        done(studio.bringOut(id));
        studio.buildAll();
        studio.publicationJob.pass();
        assertThat(studio.find(id).isPublished()).isTrue();
        return id;
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everybodyIsToldOnceOfEachLessonInTheirLanguage(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            agree(studio, reader(1), Locale.ENGLISH);
            agree(studio, reader(2), Locale.GERMAN);
            var id = out(studio, "Rope & Pulley");
            agree(studio, reader(3), Locale.ENGLISH); // too late for this one

            assertThat(studio.newsRound.pass()).isEqualTo(2);
            assertThat(studio.newsRound.pass()).isZero();
            studio.publicationJob.pass();
            assertThat(studio.newsRound.pass()).isZero();
            var english = letter(studio, 1);
            assertThat(english.subject()).isEqualTo("New in Low Tide: Rope & Pulley");
            assertThat(english.text()).contains("https://example.org/e/" + id, "desk@example.org", "you agreed on");
            assertThat(letter(studio, 2).subject()).isEqualTo("Neu in Low Tide: Rope & Pulley");
            assertThat(studio.outbox.to(reader(3))).isEmpty();

            out(studio, "Slack Water");
            assertThat(studio.newsRound.pass()).isEqualTo(3);
            assertThat(studio.outbox.to(reader(1))).hasSize(2);
        }
    }

    private static Mail letter(Studio studio, int reader) {
        return studio.outbox.to(reader(reader)).get(0).message();
    }

    /** RFC 8058 section 3.1: an address for one request, which names whom it is about without a cookie. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void eachLetterCarriesItsOwnEnd(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            agree(studio, reader(1), Locale.ENGLISH);
            agree(studio, reader(2), Locale.ENGLISH);
            out(studio, "Rope and Pulley");
            studio.newsRound.pass();
            var ends = IntStream.of(1, 2)
                    .mapToObj(number -> letter(studio, number).unsubscribe().orElseThrow())
                    .toList();
            assertThat(ends).doesNotHaveDuplicates();
            for (int number : List.of(1, 2)) {
                String end = ends.get(number - 1).toString();
                assertThat(letter(studio, number).text()).contains(end);
                assertThat(letter(studio, number).html().orElseThrow()).contains("href=\"" + end + "\"");
                String key = end.substring(end.lastIndexOf('/') + 1);
                assertThat(studio.newsReaders.find(key).orElseThrow().email()).isEqualTo(reader(number));
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionIsNotTheLessonAgain(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            agree(studio, reader(1), Locale.ENGLISH);
            var id = out(studio, "Rope and Pulley");
            studio.newsRound.pass();
            studio.write(id, "bar 1\n1-4 E7\n");
            studio.clock.advance(Duration.ofMinutes(1));
            done(studio.correct(id));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.releases.of(id)).hasSize(2);
            assertThat(studio.newsRound.pass()).isZero();
        }
    }

    /** As where a lesson goes between the look for what waits and the letter about it. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterWhoseLessonIsNotThereJustNowWaits(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            agree(studio, reader(1), Locale.ENGLISH);
            out(studio, "Rope and Pulley");
            var jdbi = database.jdbi();
            jdbi.useHandle(
                    handle -> handle.execute("update episode set deleted_at = now() where title = 'Rope and Pulley'"));
            assertThat(studio.newsRound.pass()).isZero();
            jdbi.useHandle(handle -> handle.execute("update episode set deleted_at = null"));
            assertThat(studio.newsRound.pass()).isEqualTo(1);
        }
    }

    /** A letter whose row cannot be written is marked as written no more than the row is there. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatFailsIsDoneLaterAndEachIsReachedOnce(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            var readers = IntStream.range(0, 60).mapToObj(NewsRoundTest::reader).toList();
            readers.forEach(email -> agree(studio, email, Locale.ENGLISH));
            out(studio, "Rope and Pulley");

            run(database, "alter table outbox add constraint few check (recipient <> 'reader30@example.net')");
            assertThat(studio.newsRound.pass()).isEqualTo(NewsRound.A_STEP - 1);
            run(database, "alter table outbox drop constraint few");
            studio.clock.advance(Duration.ofMinutes(10));
            var postman = new Postman(database.jdbi(), willing, studio.clock, Runnable::run);
            for (int round = 0; round < 20; round++) {
                studio.newsRound.pass();
                postman.deliverDue();
            }
            assertThat(reached).containsExactlyInAnyOrderElementsOf(readers);
        }
    }

    /** More of them than one pass has room for. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lettersThatCannotBeWrittenHoldUpNoOthers(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            IntStream.range(0, NewsRound.A_STEP)
                    .mapToObj(number -> new EmailAddress("broken" + number + "@example.net"))
                    .forEach(email -> agree(studio, email, Locale.ENGLISH));
            agree(studio, reader(1), Locale.ENGLISH);
            out(studio, "Rope and Pulley");
            run(database, "alter table outbox add constraint few check (recipient not like 'broken%')");
            assertThat(studio.newsRound.pass()).as("the head of the queue").isZero();
            assertThat(studio.newsRound.pass()).isEqualTo(1);
            assertThat(studio.outbox.to(reader(1))).hasSize(1);
        }
    }

    /** The mail server of a school is down for an evening, and tries follow one another after an hour and more. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lettersThatAMailServerPutsOffHoldUpNoOthers(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            IntStream.range(0, 50).forEach(number -> agree(studio, reader(number), Locale.ENGLISH));
            out(studio, "Rope and Pulley");
            assertThat(studio.newsRound.pass()).isEqualTo(NewsRound.A_STEP);
            var later = studio.clock.instant().plus(Duration.ofHours(1));
            database.jdbi()
                    .useHandle(handle -> handle.execute("update outbox set attempts = 4, send_after = ?", later));
            assertThat(studio.newsRound.pass()).isEqualTo(10);
        }
    }

    private static void run(Database database, String sql) {
        database.jdbi().useHandle(handle -> handle.execute(sql));
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlySoManyAreOnTheirWayAndALetterToOnePersonGoesFirst(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            IntStream.range(0, 50).forEach(number -> agree(studio, reader(number), Locale.ENGLISH));
            out(studio, "Rope and Pulley");
            assertThat(studio.newsRound.pass()).isEqualTo(NewsRound.A_STEP);
            assertThat(studio.newsRound.pass()).isZero();

            studio.clock.advance(Duration.ofMinutes(1));
            var urgent = new EmailAddress("signing.in@example.net");
            studio.outbox.put(Mail.of(urgent, "Link", "x", studio.clock.instant()));
            new Postman(database.jdbi(), willing, studio.clock, Runnable::run).deliverDue();
            assertThat(reached.get(0)).isEqualTo(urgent);
            assertThat(studio.newsRound.pass()).isEqualTo(10);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theEducatorsOwnWordsStandInIt(Database database) {
        try (database) {
            var studio = new Studio(database);
            studio.episode("Begun");
            var series = studio.catalog.open(studio.educator, Deed.KEEP).get(0);
            var refused =
                    studio.newsTexts.save(studio.educator, series.id(), new NewsText("two\nlines", "x".repeat(1001)));
            assertThat(refused.problems()).extracting("field").containsExactly("subject", "opening");
            done(studio.newsTexts.save(
                    studio.educator, series.id(), new NewsText(" [series] [number]: [title] ", "Hello,\nhere it is.")));
            agree(studio, reader(1), Locale.GERMAN);
            out(studio, "Rope and Pulley");
            studio.newsRound.pass();
            assertThat(letter(studio, 1).subject()).isEqualTo("Low Tide 2: Rope and Pulley");
            assertThat(letter(studio, 1).text()).startsWith("Hello,\nhere it is.\n\nNr. 2: Rope and Pulley\n");
        }
    }
}
