package groundbass.release.find;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.Parts;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.identity.Slug;
import groundbass.release.BuildSpec;
import groundbass.release.find.LessonQuery.Order;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.jdbi.v3.core.JdbiException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Three lessons that are out and one that is not, found on both databases. What is expected was read off their texts. */
class LessonIndexTest {
    private static final LessonQuery ALL = query("");

    private final SettableClock clock = SettableClock.at("2026-03-02T09:00:00Z");
    private Parts parts;
    private LessonIndex index;
    private EducatorId educator;
    private SeriesId series;

    private void fill(Database database) {
        parts = Parts.over(database.jdbi(), clock);
        index = new LessonIndex(database.jdbi(), parts.releases(), parts.revisions());
        educator = TrialEducators.create(database.jdbi(), clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        series = parts.catalog()
                .create(educator, new SeriesForm("Low Tide", "low-tide", "", "UTC"))
                .result()
                .orElseThrow()
                .id();
        out("Slack Water", Level.ADVANCED, line("A dorian", "4/4", 96, "E A D G", "E5 slap"), "The ebb ñandú turns.");
        out("Café at Noon", Level.BEGINNER, line("C major", "3/4", 60, "B E A D G", "E3"), "Straße und Übung.");
        out("Neap", Level.INTERMEDIATE, line("B minor", "4/4", 120, "E A D G", "E7"), "Nothing of slack here.");
        draft("Spring Tide", Level.BEGINNER, line("C major", "4/4", 80, "E A D G", "E1"), "");
        index.catchUp(100);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lessonsAreFoundByWhatTheyAre(Database database) {
        try (database) {
            fill(database);
            assertThat(found(ALL)).containsExactly("Neap", "Café at Noon", "Slack Water");
            assertThat(found(with("4/4", OptionalInt.empty(), OptionalInt.empty(), Order.NEWEST)))
                    .containsExactly("Neap", "Slack Water");
            assertThat(found(with("", OptionalInt.of(60), OptionalInt.of(96), Order.TEMPO)))
                    .containsExactly("Café at Noon", "Slack Water");
            assertThat(found(with("", OptionalInt.empty(), OptionalInt.empty(), Order.LEVEL)))
                    .containsExactly("Café at Noon", "Neap", "Slack Water");
            assertThat(found(with("", OptionalInt.empty(), OptionalInt.empty(), Order.NUMBER)))
                    .containsExactly("Slack Water", "Café at Noon", "Neap");
            assertThat(found(technique("slap"))).containsExactly("Slack Water");
            assertThat(found(technique("sla"))).isEmpty();
            assertThat(index.count(ALL)).isEqualTo(3);
            assertThat(index.find(ALL, 1, 1)).extracting(FoundLesson::title).containsExactly("Café at Noon");
            var choices = index.choices();
            assertThat(choices.keys()).containsExactly("A dorian", "B minor", "C major");
            assertThat(choices.meters()).containsExactly("3/4", "4/4");
            assertThat(choices.strings()).containsExactly(4, 5);
            assertThat(choices.levels()).containsExactly(Level.values());
            assertThat(choices.techniques()).contains("slap");
            assertThat(choices.series()).containsExactly(new Choices.SeriesName(new Slug("low-tide"), "Low Tide"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void wordsAreFoundByTheirBeginningWhateverTheirAccents(Database database) {
        try (database) {
            fill(database);
            assertThat(found(query("slack"))).as("in a title first").containsExactly("Slack Water", "Neap");
            assertThat(found(query("nandu EBB"))).containsExactly("Slack Water");
            assertThat(found(query("cafe strasse ubung"))).containsExactly("Café at Noon");
            assertThat(found(query("lack"))).as("no beginning").isEmpty();
            assertThat(found(query("% _ ' \\"))).as("no words at all").hasSize(3);
            assertThat(found(query("spring"))).as("what is not out").isEmpty();
            assertThat(found(query("minor"))).as("in the walkthrough").containsExactly("Neap");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatHasTheWordsInItsTitleIsFoundFirstWhateverTheirAccentsAndOrder(Database database) {
        try (database) {
            fill(database);
            out("Zweite Übung", Level.BEGINNER, line("C major", "4/4", 80, "E A D G", "E1"), "Aufwärts.");
            out("Aufwärts", Level.BEGINNER, line("C major", "4/4", 80, "E A D G", "E1"), "Zweite Übung.");
            out("Third", Level.BEGINNER, line("C major", "4/4", 80, "E A D G", "E1"), "Zweite Übung, aufwärts.");
            index.catchUp(100);
            assertThat(found(query("zweite ubung aufwarts"))).containsExactly("Zweite Übung", "Aufwärts", "Third");
            assertThat(found(query("Übung"))).startsWith("Zweite Übung");
            assertThat(index.count(query("zweite ubung aufwarts"))).isEqualTo(3);
        }
    }

    /** A database that cannot be written for a while says nothing of a release. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatTheDatabaseKeepsFromBeingReadIsReadLater(Database database) {
        try (database) {
            fill(database);
            out("Late", Level.BEGINNER, line("C major", "4/4", 77, "E A D G", "E1"), "");
            database.jdbi()
                    .useHandle(handle ->
                            handle.execute("alter table lesson_traits add constraint few check (tempo <> 77)"));
            assertThatThrownBy(() -> index.catchUp(100)).isInstanceOf(JdbiException.class);
            database.jdbi().useHandle(handle -> handle.execute("alter table lesson_traits drop constraint few"));
            index.catchUp(100);
            assertThat(found(query("late"))).containsExactly("Late");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatCannotBeReadIsNotInTheWayOfOthers(Database database) {
        try (database) {
            fill(database);
            database.jdbi().useHandle(handle -> {
                handle.execute("delete from lesson_traits");
                handle.execute("""
                        update revision set document = 'none' where id = (select revision_id from release
                            where published_at = (select max(published_at) from release))""");
            });
            for (int pass = 0; pass < 3; pass++) {
                index.catchUp(1);
            }
            assertThat(found(ALL)).containsExactly("Café at Noon", "Slack Water");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionIsReadInPlaceOfWhatWasOut(Database database) {
        try (database) {
            fill(database);
            var neap =
                    parts.episodes().find(new Slug("low-tide"), 3).orElseThrow().id();
            release(neap, document("Neap", Level.BEGINNER, line("G major", "6/8", 70, "E A D G", "E3"), "Moonlight."));
            assertThat(found(query("moonlight"))).as("not read yet").isEmpty();
            index.catchUp(100);
            assertThat(found(query("moonlight"))).containsExactly("Neap");
            assertThat(index.choices().keys()).doesNotContain("B minor").contains("G major");
            assertThat(index.count(ALL)).isEqualTo(3);
        }
    }

    private List<String> found(LessonQuery query) {
        return index.find(query, 0, 100).stream().map(FoundLesson::title).toList();
    }

    private static LessonQuery query(String text) {
        return query(text, Set.of(), "", OptionalInt.empty(), OptionalInt.empty(), Order.NEWEST);
    }

    private static LessonQuery technique(String word) {
        return query("", Set.of(word), "", OptionalInt.empty(), OptionalInt.empty(), Order.NEWEST);
    }

    private static LessonQuery with(String meter, OptionalInt slowest, OptionalInt fastest, Order order) {
        return query("", Set.of(), meter, slowest, fastest, order);
    }

    private static LessonQuery query(
            String text, Set<String> techniques, String meter, OptionalInt slowest, OptionalInt fastest, Order order) {
        return new LessonQuery(
                LessonQuery.words(text),
                techniques,
                Optional.empty(),
                Optional.empty(),
                Optional.of(meter).filter(given -> !given.isEmpty()),
                OptionalInt.empty(),
                slowest,
                fastest,
                Optional.empty(),
                order);
    }

    private static String line(String key, String meter, int tempo, String strings, String note) {
        int beats = meter.charAt(0) - '0';
        return "key %s%nmeter %s%ntempo %d%nstrings %s%nstyle finger%n%nbar 1%n1 %s%n2-%d rest%n"
                .formatted(key, meter, tempo, strings, note, beats);
    }

    private static EpisodeDocument document(String title, Level level, String line, String notes) {
        return EpisodeDocument.titled(title, level)
                .edit()
                .mainLine(new LineSource("", line))
                .notes(notes)
                .done();
    }

    private EpisodeId draft(String title, Level level, String line, String notes) {
        var id = parts.desk()
                .create(educator, series, title, level)
                .result()
                .orElseThrow()
                .id();
        save(id, document(title, level, line, notes));
        return id;
    }

    private void save(EpisodeId id, EpisodeDocument document) {
        int version = parts.desk().draft(educator, id).orElseThrow().version();
        parts.desk().saveDraft(educator, id, version, document);
    }

    private void out(String title, Level level, String line, String notes) {
        var id = draft(title, level, line, notes);
        release(id, document(title, level, line, notes));
        parts.jdbi().useTransaction(handle -> parts.episodes().markPublished(handle, id, clock.instant()));
    }

    /** What is built of it is of no account here. */
    private void release(EpisodeId id, EpisodeDocument document) {
        clock.advance(Duration.ofDays(7));
        save(id, document);
        var revision = parts.desk()
                .makeRevision(educator, id, "")
                .result()
                .orElseThrow()
                .id();
        int number =
                parts.releases().latest(id).map(last -> last.spec().release()).orElse(0) + 1;
        var spec = new BuildSpec(
                revision,
                number,
                "Low Tide",
                1,
                "a",
                "https://example.org/e/" + id,
                LocalDate.EPOCH,
                BuildSpec.RENDERERS);
        parts.jdbi().useTransaction(handle -> {
            var release = parts.releases().create(handle, id, spec, false, clock.instant());
            handle.execute("update release set state = 'ready' where id = ?", release.value());
            parts.releases().publish(handle, release, clock.instant());
        });
    }
}
