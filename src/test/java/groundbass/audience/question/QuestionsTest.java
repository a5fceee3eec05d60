package groundbass.audience.question;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Leaving;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.Student;
import groundbass.audience.student.Students;
import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesPart;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class QuestionsTest {
    private static final EmailAddress ANNA = new EmailAddress("a.reader@example.org");
    private static final EmailAddress STUDIO = new EmailAddress("studio@example.org");

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aQuestionIsSettledOnceByWhomItIsFor(Database database) {
        try (database) {
            var desk = new Desk(database);
            var lesson = desk.catalog.episode("Lantern");
            desk.questions.ask(desk.anna.id(), desk.asked(lesson.id(), Topic.MUSIC, "3.2&"));
            desk.catalog.clock.advance(Duration.ofMinutes(1));
            desk.questions.ask(desk.anna.id(), desk.asked(lesson.id(), Topic.RIGHTS, ""));

            assertThat(desk.questions.to(desk.catalog.owner))
                    .as("who has waited longest comes first")
                    .extracting(question -> question.topic() + " "
                            + question.place().map(AskedPlace::value).orElse("-"))
                    .containsExactly("MUSIC 3.2&", "RIGHTS -");
            assertThat(desk.questions.to(desk.catalog.stranger)).isEmpty();
            assertThat(desk.questions.waiting(desk.catalog.owner)).isEqualTo(2);
            assertThat(desk.letters(STUDIO))
                    .containsExactlyInAnyOrder(
                            "Frage zu Lantern, Takt 3, Zählzeit 2&", "Rechteproblem gemeldet: Lantern");

            var newest = desk.questions.to(desk.catalog.owner).get(1).id();
            assertThat(desk.questions.settle(desk.catalog.stranger, newest, QuestionEnd.ANSWERED, "Mine"))
                    .isFalse();
            assertThat(desk.questions.settle(desk.catalog.owner, newest, QuestionEnd.CORRECTED, ""))
                    .isTrue();
            assertThat(desk.questions.settle(desk.catalog.owner, newest, QuestionEnd.ANSWERED, "Again"))
                    .isFalse();
            assertThat(desk.letters(ANNA)).containsExactly("Your report about Lantern");
            assertThat(desk.questions.waiting(desk.catalog.owner)).isEqualTo(1);
            assertThat(desk.questions.to(desk.catalog.owner))
                    .as("what waits comes first")
                    .extracting(Question::outcome)
                    .containsExactly(Optional.empty(), Optional.of(QuestionEnd.CORRECTED));
        }
    }

    /** The desk shows 200 at once (ours). */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLessonShowsItsQuestionsHoweverManyWaitAboutAnother(Database database) {
        try (database) {
            var desk = new Desk(database);
            var busy = desk.catalog.episode("Lantern");
            for (int bar = 1; bar <= 201; bar++) {
                desk.questions.ask(desk.anna.id(), desk.asked(busy.id(), Topic.MUSIC, "" + bar));
            }
            desk.catalog.clock.advance(Duration.ofMinutes(1));
            var quiet = desk.catalog.episode("Harbour");
            desk.questions.ask(desk.anna.id(), desk.asked(quiet.id(), Topic.MUSIC, "7"));

            assertThat(desk.questions.to(desk.catalog.owner)).hasSize(200);
            assertThat(desk.questions.to(desk.catalog.owner, quiet.id()))
                    .extracting(Question::lesson)
                    .containsExactly("Harbour");
            assertThat(desk.questions.to(desk.catalog.stranger, quiet.id())).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aQuestionGoesWithItsStudent(Database database) {
        try (database) {
            var desk = new Desk(database);
            var lesson = desk.catalog.episode("Lantern");
            desk.questions.ask(desk.anna.id(), desk.asked(lesson.id(), Topic.MUSIC, "3"));
            assertThat(desk.questions.of(desk.anna.id())).hasSize(1);
            desk.leaving.forget(desk.anna.id());
            assertThat(desk.questions.of(desk.anna.id())).isEmpty();
            assertThat(desk.questions.to(desk.catalog.owner)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLetterNamesTheExercise(Database database) {
        try (database) {
            var desk = new Desk(database);
            var lesson = desk.catalog.episode("Lantern").id();
            var place = AskedPlace.read("3.2&");
            desk.questions.ask(desk.anna.id(), new TypedQuestion(lesson, Topic.MUSIC, "exercise-2", place, "Why?"));
            desk.questions.ask(
                    desk.anna.id(),
                    new TypedQuestion(lesson, Topic.MUSIC, "exercise-2", Optional.empty(), "How fast?"));
            assertThat(desk.letters(STUDIO))
                    .containsExactlyInAnyOrder(
                            "Frage zu Lantern, Übung 2, Takt 3, Zählzeit 2&", "Frage zu Lantern, Übung 2");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoWritesInTheSeriesIsToldToo(Database database) {
        try (database) {
            var desk = new Desk(database);
            var lesson = desk.catalog.episode("Lantern");
            var colleagues = new Colleagues(desk.catalog.jdbi, desk.catalog.audit, desk.catalog.clock);
            var other = new Educators(desk.catalog.jdbi, desk.catalog.audit, desk.catalog.clock)
                    .find(desk.catalog.stranger)
                    .orElseThrow();
            var series = desk.catalog.series.id();
            desk.catalog.jdbi.useTransaction(
                    handle -> colleagues.enter(handle, other.id(), series, SeriesPart.READER_OF_FIGURES));
            desk.questions.ask(desk.anna.id(), desk.asked(lesson.id(), Topic.MUSIC, "3"));
            assertThat(desk.letters(new EmailAddress(other.email()))).isEmpty();
            desk.catalog.jdbi.useTransaction(handle -> colleagues.enter(handle, other.id(), series, SeriesPart.EDITOR));
            desk.questions.ask(desk.anna.id(), desk.asked(lesson.id(), Topic.MUSIC, "4"));
            assertThat(desk.letters(new EmailAddress(other.email()))).containsExactly("Frage zu Lantern, Takt 4");
            assertThat(desk.letters(STUDIO)).hasSize(2);
        }
    }

    @Test
    void aPlaceIsABarOrACountOfIt() {
        assertThat(AskedPlace.read(" 3 . 2& ")).contains(new AskedPlace("3.2&"));
        assertThat(AskedPlace.read("12").map(AskedPlace::bar)).contains(12);
        assertThat(AskedPlace.read("12").flatMap(AskedPlace::count)).isEmpty();
        assertThat(AskedPlace.read("3.2A").flatMap(AskedPlace::count)).contains("2a");
        for (String odd : new String[] {"", "bar 3", "3.", "3.2x", "-1", "99999"}) {
            assertThat(AskedPlace.read(odd)).as(odd).isEmpty();
        }
    }

    /** A desk that speaks German, and a student who reads English. */
    private static final class Desk {
        final CatalogFixture catalog;
        final Outbox outbox;
        final Questions questions;
        final Student anna;
        final Leaving leaving;

        Desk(Database database) {
            catalog = new CatalogFixture(database);
            outbox = new Outbox(catalog.jdbi, catalog.clock);
            var head = new LetterHead("Quay", "Trial Studio", URI.create("https://bass.example"));
            questions = new Questions(catalog.jdbi, outbox, () -> head, () -> Locale.GERMAN, catalog.clock);
            var students = new Students(catalog.jdbi, outbox, catalog.audit, catalog.clock);
            anna = catalog.jdbi.inTransaction(handle -> students.create(handle, ANNA, Locale.ENGLISH));
            leaving = new Leaving(catalog.jdbi, students, new NewsReaders(catalog.jdbi, catalog.clock));
        }

        TypedQuestion asked(EpisodeId lesson, Topic topic, String place) {
            return new TypedQuestion(lesson, topic, "line", AskedPlace.read(place), "Which finger?");
        }

        List<String> letters(EmailAddress to) {
            return outbox.to(to).stream()
                    .map(letter -> letter.message().subject())
                    .toList();
        }
    }
}
