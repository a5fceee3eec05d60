package groundbass.catalog.upload;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.PictureBytes;
import groundbass.audio.AudioBytes;
import groundbass.catalog.CatalogFixture;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.upload.TakingOut.Whither;
import groundbass.document.BackingTrack;
import groundbass.form.FieldProblem;
import groundbass.lesson.NotePictures;
import groundbass.store.BlobFolder;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** The month is ours, as for drafts that are thrown away. */
class TakingOutTest {
    @TempDir
    private Path folder;

    private CatalogFixture fixture;
    private Uploads uploads;
    private TakingOut takingOut;

    private void open(Database database) throws IOException {
        fixture = new CatalogFixture(database);
        uploads = fixture.parts.uploads(new BlobFolder(folder, fixture.clock));
        takingOut = new TakingOut(fixture.jdbi, fixture.episodes, fixture.desk, fixture.audit, fixture.clock);
    }

    private Upload recording(EpisodeId lesson) throws IOException {
        byte[] second = AudioBytes.wav(1, 1, 8_000, 16, 16_000);
        return uploads.accept(fixture.owner, lesson, "band.wav", new ByteArrayInputStream(second))
                .result()
                .orElseThrow();
    }

    private Picture picture(EpisodeId lesson) throws IOException {
        return uploads.pictures()
                .accept(fixture.owner, lesson, "thumb.png", "The thumb", PictureBytes.png())
                .result()
                .orElseThrow();
    }

    private void play(EpisodeId lesson, Upload upload) {
        var track = new BackingTrack(upload.id(), upload.blob().sha256(), "Band", BackingTrack.Kind.FULL);
        fixture.desk.saveDraft(fixture.owner, lesson, (stored, yours) -> true, before -> before.edit()
                .backingTracks(List.of(track))
                .done());
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRecordingGoesOutOfItsDraftAndIsPutBackWithinAMonth(Database database) throws IOException {
        try (database) {
            open(database);
            var lesson = fixture.episode("First").id();
            var upload = recording(lesson);
            play(lesson, upload);
            fixture.clock.advance(Duration.ofMinutes(1));
            assertThat(takingOut.recording(fixture.owner, lesson, upload.id()).result())
                    .contains(Whither.ASIDE);
            assertThat(uploads.of(lesson)).isEmpty();
            assertThat(uploads.find(upload.id())).isEmpty();
            assertThat(fixture.desk
                            .draft(fixture.owner, lesson)
                            .orElseThrow()
                            .document()
                            .backingTracks())
                    .isEmpty();
            assertThat(uploads.names(upload.blob().sha256())).isTrue();
            assertThat(uploads.findAsOf(upload.id(), fixture.clock.instant().minusSeconds(30)))
                    .as("a release that was asked for before has it")
                    .contains(upload);
            assertThat(uploads.findAsOf(upload.id(), fixture.clock.instant())).isEmpty();
            assertThat(takingOut.recordings(lesson))
                    .containsExactly(new TakenOut(upload.id().value(), "band.wav", fixture.clock.instant()));
            fixture.clock.advance(Duration.ofDays(29));
            takingOut.empty(content -> false);
            assertThat(takingOut
                            .putBackRecording(fixture.owner, lesson, upload.id())
                            .problems())
                    .isEmpty();
            assertThat(uploads.of(lesson)).containsExactly(upload);
            assertThat(takingOut.recordings(lesson)).isEmpty();
            assertThat(fixture.auditedWords()).startsWith("upload.restored", "upload.removed");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void afterAMonthItIsDeletedUnlessSomethingPublishedHasIt(Database database) throws IOException {
        try (database) {
            open(database);
            var lesson = fixture.episode("First").id();
            var upload = recording(lesson);
            var picture = picture(lesson);
            takingOut.recording(fixture.owner, lesson, upload.id());
            takingOut.picture(fixture.owner, lesson, picture.id());
            fixture.clock.advance(Duration.ofDays(30)); // what the page promises that asks before
            takingOut.empty(picture.blob().sha256()::equals);
            assertThat(uploads.findAny(upload.id())).isEmpty();
            assertThat(uploads.names(upload.blob().sha256())).isFalse();
            assertThat(uploads.pictures().findAny(picture.id())).contains(picture);
            assertThat(uploads.pictures().find(picture.id())).isEmpty();
            assertThat(takingOut.pictures(lesson)).isEmpty();
            assertThat(takingOut
                            .putBackPicture(fixture.owner, lesson, picture.id())
                            .problems())
                    .containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            assertThat(fixture.auditedWords()).first().isEqualTo("upload.purged");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatAnotherLessonUsesIsThatLessonsFromThenOn(Database database) throws IOException {
        try (database) {
            open(database);
            var first = fixture.episode("First").id();
            var second = fixture.episode("Second").id();
            var picture = picture(first);
            var upload = recording(first);
            play(second, upload);
            fixture.desk.saveDraft(fixture.owner, second, (stored, yours) -> true, before -> before.edit()
                    .notes(NotePictures.typed(picture.id(), "The thumb"))
                    .done());
            assertThat(takingOut.alsoIn(picture.id(), first)).containsExactly(second);
            assertThat(takingOut.picture(fixture.owner, first, picture.id()).result())
                    .contains(Whither.ELSEWHERE);
            assertThat(takingOut.recording(fixture.owner, first, upload.id()).result())
                    .contains(Whither.ELSEWHERE);
            assertThat(uploads.pictures().of(second)).extracting(Picture::id).containsExactly(picture.id());
            assertThat(uploads.of(second)).extracting(Upload::id).containsExactly(upload.id());
            assertThat(takingOut.pictures(first)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyElseTakesAnythingOut(Database database) throws IOException {
        try (database) {
            open(database);
            var lesson = fixture.episode("First").id();
            var other = fixture.episode("Second").id();
            var picture = picture(lesson);
            for (var refused : List.of(
                    takingOut.picture(fixture.stranger, lesson, picture.id()),
                    takingOut.picture(fixture.owner, other, picture.id()))) {
                assertThat(refused.problems()).containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            }
            assertThat(uploads.pictures().of(lesson)).containsExactly(picture);
        }
    }
}
