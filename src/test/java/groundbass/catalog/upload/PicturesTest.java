package groundbass.catalog.upload;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.PictureBytes;
import groundbass.catalog.CatalogFixture;
import groundbass.form.FieldProblem;
import groundbass.lesson.NotePictures;
import groundbass.store.BlobFolder;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Path;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class PicturesTest {
    @TempDir
    private Path folder;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPictureIsKeptWithItsWordsAndNamedForTheSweep(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var episode = fixture.episode("First").id();
            var picture = uploads.pictures()
                    .accept(fixture.owner, episode, "C:\\me\\thumb.png", " The thumb ", PictureBytes.png())
                    .result()
                    .orElseThrow();
            assertThat(picture.originalName()).isEqualTo("thumb.png");
            assertThat(picture.words()).isEqualTo("The thumb");
            assertThat(picture.wide()).isEqualTo(40);
            assertThat(uploads.pictures().find(picture.id())).contains(picture);
            assertThat(uploads.pictures().of(episode)).containsExactly(picture);
            assertThat(uploads.names(picture.blob().sha256())).isTrue();
            assertThat(fixture.auditedWords()).first().isEqualTo("picture.created");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void withoutWordsOrAccessThereIsNone(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var pictures =
                    fixture.parts.uploads(new BlobFolder(folder, fixture.clock)).pictures();
            var episode = fixture.episode("First").id();
            assertThat(pictures.accept(fixture.owner, episode, "a.png", "  ", PictureBytes.png())
                            .problems())
                    .containsExactly(FieldProblem.of("words", "catalog.picture.words"));
            assertThat(pictures.accept(fixture.stranger, episode, "a.png", "A thumb", PictureBytes.png())
                            .problems())
                    .containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            assertThat(pictures.of(episode)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatADuplicateShowsOutlivesTheLessonItWasSentFor(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var rows = new UploadRepository(fixture.jdbi);
            var pictures =
                    fixture.parts.uploads(new BlobFolder(folder, fixture.clock)).pictures();
            var first = fixture.episode("First").id();
            var second = fixture.episode("Second").id();
            var shown = pictures.accept(fixture.owner, first, "a.png", "A thumb", PictureBytes.png())
                    .result()
                    .orElseThrow();
            var alone = pictures.accept(fixture.owner, first, "b.png", "A wrist", PictureBytes.png())
                    .result()
                    .orElseThrow();
            var desk = fixture.parts.desk();
            desk.saveDraft(fixture.owner, second, (stored, yours) -> true, before -> before.edit()
                            .notes(NotePictures.typed(shown.id(), shown.words()))
                            .done())
                    .result()
                    .orElseThrow();
            fixture.jdbi.useTransaction(handle -> rows.forget(handle, first));
            assertThat(pictures.find(shown.id())).map(Picture::episode).contains(second);
            assertThat(pictures.find(alone.id())).isEmpty();
        }
    }
}
