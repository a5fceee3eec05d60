package groundbass.catalog.episode;

import static groundbass.catalog.CatalogFixture.document;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.EducatorId;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class EpisodeServiceTest {
    private static final FieldProblem GONE = FieldProblem.of("", "catalog.problem.gone");

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void numbersFollowOneAnotherEvenWhenAllAreMadeAtOnce(Database database) throws Exception {
        try (database) {
            var fixture = new CatalogFixture(database);
            Callable<Episode> one = () -> fixture.episode("Lesson");
            var pool = Executors.newFixedThreadPool(4);
            var made = pool.invokeAll(Stream.generate(() -> one).limit(12).toList());
            pool.shutdown();
            assertThat(made).allSatisfy(future -> assertThat(future.get()).isNotNull());
            assertThat(fixture.episodes.in(fixture.series.id()))
                    .extracting(Episode::number)
                    .containsExactly(1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void forAStrangerEverythingIsGone(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            var who = fixture.stranger;
            assertThat(fixture.desk
                            .create(who, fixture.series.id(), "Mine", Level.BEGINNER)
                            .problems())
                    .containsExactly(GONE);
            assertThat(fixture.desk.move(who, id, 2).problems()).containsExactly(GONE);
            assertThat(fixture.desk.draft(who, id)).isEmpty();
            assertThat(fixture.desk.saveDraft(who, id, 0, document("Mine")).problems())
                    .containsExactly(GONE);
            assertThat(fixture.desk.makeRevision(who, id, "").problems()).containsExactly(GONE);
            assertThat(fixture.episodes.find(id)).map(Episode::title).contains("First");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsBegunWithADocumentShowsWhatThatSays(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var begun = document("First").edit().summary("Three notes.").done();
            var made = fixture.desk
                    .create(fixture.owner, fixture.series.id(), begun)
                    .result()
                    .orElseThrow();
            assertThat(made.summary()).isEqualTo("Three notes.");
            assertThat(fixture.now(made)).isEqualTo(made);
            assertThat(fixture.desk.draft(fixture.owner, made.id()))
                    .map(Draft::document)
                    .contains(begun);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void movingAnEpisodeMovesThoseBetweenAndLeavesPublishedOnes(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var all = fixture.episodes(5);
            fixture.publish(all.get(2)); // number 3
            var moved = fixture.desk
                    .move(fixture.owner, all.get(4).id(), 1)
                    .result()
                    .orElseThrow();
            assertThat(moved.number()).isEqualTo(1);
            assertThat(fixture.episodes.in(fixture.series.id()))
                    .extracting(Episode::title)
                    .containsExactly("Lesson 5", "Lesson 1", "Lesson 3", "Lesson 2", "Lesson 4");
            assertThat(fixture.episodes.in(fixture.series.id()))
                    .extracting(Episode::number)
                    .containsExactly(1, 2, 3, 4, 5);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aFreeNumberIsTakenAsItIs(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var all = fixture.episodes(2);
            fixture.desk.move(fixture.owner, all.get(0).id(), 7);
            assertThat(fixture.now(all.get(0)).number()).isEqualTo(7);
            assertThat(fixture.now(all.get(1)).number()).isEqualTo(2);
            assertThat(fixture.episode("Next").number()).isEqualTo(8);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void publishedNumbersStandFast(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var all = fixture.episodes(2);
            fixture.publish(all.get(0));
            assertThat(fixture.desk.move(fixture.owner, all.get(0).id(), 5).problems())
                    .containsExactly(FieldProblem.of("number", "catalog.problem.number.published", 1));
            assertThat(fixture.desk.move(fixture.owner, all.get(1).id(), 1).problems())
                    .containsExactly(FieldProblem.of("number", "catalog.problem.number.taken", 1));
            assertThat(fixture.desk.move(fixture.owner, all.get(1).id(), 0).problems())
                    .hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void twoWindowsNeverOverwriteEachOtherAndBothTextsComeBack(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            var first = saved(fixture.desk.saveDraft(fixture.owner, id, 0, document("window one")));
            assertThat(first.version()).isEqualTo(1);
            assertThat(fixture.desk
                            .saveDraft(fixture.owner, id, 0, document("window two"))
                            .result())
                    .contains(new DraftSave.Conflict(first, document("window two")));
            assertThat(fixture.desk.draft(fixture.owner, id)).contains(first);
            var second = saved(fixture.desk.saveDraft(fixture.owner, id, 1, document("window two")));
            assertThat(second.version()).isEqualTo(2);
            assertThat(fixture.desk.draft(fixture.owner, id)).contains(second);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void ofManySavesAtOnceFromOneVersionExactlyOneWins(Database database) throws Exception {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            Callable<Draft> save = () -> saved(fixture.desk.saveDraft(fixture.owner, id, 0, document("typed")));
            var pool = Executors.newFixedThreadPool(4);
            int wins = 0;
            for (var future :
                    pool.invokeAll(Stream.generate(() -> save).limit(8).toList())) {
                wins += won(future) ? 1 : 0;
            }
            pool.shutdown();
            assertThat(wins).isEqualTo(1);
            assertThat(fixture.desk.draft(fixture.owner, id))
                    .map(Draft::version)
                    .contains(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDraftKeepsWhatIsWrongAsItWasTyped(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            var typed = document(" ")
                    .edit()
                    .notes("Ünïcödé ♯ \uD83C\uDFB8 ".repeat(20_000))
                    .mainLine(new LineSource("", "bar ??\n\t<script>"))
                    .exercises(List.of(LineSource.EMPTY))
                    .done();
            saved(fixture.desk.saveDraft(fixture.owner, id, 0, typed));
            assertThat(fixture.desk.draft(fixture.owner, id))
                    .map(Draft::document)
                    .contains(typed);
            assertThat(fixture.desk.makeRevision(fixture.owner, id, "").problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("title", "notes", "exercises[0]");
            assertThat(fixture.episodes.find(id)).map(Episode::title).contains("First");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aNewDraftBeginsWithTheTitleOrWithTheLatestRevision(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            assertThat(fixture.desk.draft(fixture.owner, episode.id()))
                    .map(Draft::document)
                    .contains(EpisodeDocument.titled("First", Level.BEGINNER));
            var document = document("Imported");
            fixture.jdbi.useTransaction(
                    h -> fixture.revisions.append(h, episode.id(), document, fixture.owner, "import"));
            var draft = fixture.desk.draft(fixture.owner, episode.id()).orElseThrow();
            assertThat(draft.document()).isEqualTo(document);
            assertThat(draft.version()).isZero();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void revisionsAreNumberedAndStayWhateverIsTypedLater(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            fixture.desk.saveDraft(fixture.owner, id, 0, document("one"));
            var one = fixture.desk
                    .makeRevision(fixture.owner, id, "begin")
                    .result()
                    .orElseThrow();
            fixture.desk.saveDraft(fixture.owner, id, 1, document("two"));
            var two = fixture.desk
                    .makeRevision(fixture.owner, id, "wrong note")
                    .result()
                    .orElseThrow();
            assertThat(two.number()).isEqualTo(2);
            assertThat(fixture.revisions.find(one.id())).contains(one);
            assertThat(one.document()).isEqualTo(document("one"));
            assertThat(fixture.revisions.of(id)).containsExactly(two, one);
            assertThat(fixture.revisions.latest(id)).contains(two);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anUnchangedDraftMakesNoSecondRevision(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            fixture.desk.saveDraft(fixture.owner, id, 0, document("one"));
            var one = fixture.desk.makeRevision(fixture.owner, id, "").result();
            assertThat(fixture.desk.makeRevision(fixture.owner, id, "again").result())
                    .isEqualTo(one);
            assertThat(fixture.revisions.of(id)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void goingBackToARevisionKeepsWhatWasTypedAsOne(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            fixture.desk.saveDraft(fixture.owner, id, 0, document("one"));
            fixture.desk.makeRevision(fixture.owner, id, "");
            var unsound = document("two").edit().mainLine(LineSource.EMPTY).done();
            fixture.desk.saveDraft(fixture.owner, id, 1, unsound);
            var draft = fixture.desk
                    .restore(fixture.owner, id, 1, "before")
                    .result()
                    .orElseThrow();
            assertThat(draft.document()).isEqualTo(document("one"));
            assertThat(draft.version()).isEqualTo(3);
            assertThat(fixture.desk.draft(fixture.owner, id)).contains(draft);
            assertThat(fixture.now(fixture.episodes.find(id).orElseThrow()).title())
                    .isEqualTo("one");
            assertThat(fixture.revisions.of(id)).extracting(Revision::number).containsExactly(2, 1);
            assertThat(fixture.revisions.latest(id).orElseThrow())
                    .extracting(Revision::document, Revision::note)
                    .containsExactly(unsound, "before");
            assertThat(fixture.auditedWords()).startsWith("episode.restored", "episode.revision");
        }
    }

    /** What was kept although it is unsound may be gone back to, and still does not go out. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsUnsoundIsNoRevisionForReadersEvenWhereItWasKept(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            fixture.desk.saveDraft(fixture.owner, id, 0, document("one"));
            fixture.desk.makeRevision(fixture.owner, id, "");
            fixture.desk.saveDraft(
                    fixture.owner,
                    id,
                    1,
                    document("two").edit().mainLine(LineSource.EMPTY).done());
            fixture.desk.restore(fixture.owner, id, 1, "");
            fixture.desk.restore(fixture.owner, id, 2, "");
            assertThat(fixture.desk.makeRevision(fixture.owner, id, "").problems())
                    .extracting(FieldProblem::field)
                    .containsExactly("mainLine");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void revisionsAreListedFromANumberDownAndForTheirOwnerAlone(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            for (int i = 0; i < 4; i++) {
                fixture.desk.saveDraft(fixture.owner, id, i, document("state " + i));
                fixture.desk.makeRevision(fixture.owner, id, "");
            }
            assertThat(fixture.desk.revisions(fixture.owner, id, 3, 2))
                    .extracting(Revision::number)
                    .containsExactly(3, 2);
            assertThat(fixture.desk.revision(fixture.owner, id, 2))
                    .map(revision -> revision.document().title())
                    .contains("state 1");
            var stranger = EducatorId.next();
            assertThat(fixture.desk.revisions(stranger, id, 4, 9)).isEmpty();
            assertThat(fixture.desk.revision(stranger, id, 2)).isEmpty();
            assertThat(fixture.desk.restore(stranger, id, 2, "").result()).isEmpty();
            assertThat(fixture.desk.restore(fixture.owner, id, 5, "").result()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPublishedEpisodeShowsItsOldTitleWhileANewOneIsTyped(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var episode = fixture.episode("First");
            fixture.desk.saveDraft(fixture.owner, episode.id(), 0, document("Typed before"));
            assertThat(fixture.now(episode).title()).isEqualTo("Typed before");
            fixture.publish(episode);
            fixture.desk.saveDraft(fixture.owner, episode.id(), 1, document("Typed after"));
            assertThat(fixture.now(episode).title()).isEqualTo("Typed before");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyChangeIsAudited(Database database) {
        try (database) {
            var fixture = new CatalogFixture(database);
            var id = fixture.episode("First").id();
            fixture.desk.move(fixture.owner, id, 4);
            fixture.desk.saveDraft(fixture.owner, id, 0, document("one"));
            fixture.desk.makeRevision(fixture.owner, id, "");
            assertThat(fixture.auditedWords())
                    .containsExactly("episode.revision", "episode.moved", "episode.created", "series.created");
            assertThat(fixture.audit.latest(1).get(0).who()).isEqualTo(fixture.owner.value());
        }
    }

    private static Draft saved(Outcome<DraftSave> outcome) {
        assertThat(outcome.result()).containsInstanceOf(DraftSave.Saved.class);
        return ((DraftSave.Saved) outcome.result().orElseThrow()).draft();
    }

    private static boolean won(Future<Draft> save) throws InterruptedException {
        try {
            return save.get() != null;
        } catch (ExecutionException lost) {
            assertThat(lost).hasCauseInstanceOf(AssertionError.class);
            return false;
        }
    }
}
