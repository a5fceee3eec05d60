package groundbass.catalog.upload;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audio.AudioBytes;
import groundbass.audio.AudioFormat;
import groundbass.catalog.CatalogFixture;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.SeriesPart;
import groundbass.form.FieldProblem;
import groundbass.identity.Sha256;
import groundbass.store.BlobFolder;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.SequenceInputStream;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class UploadsTest {
    private static final byte[] SECOND = AudioBytes.wav(1, 1, 8_000, 16, 16_000);

    @TempDir
    private Path folder;

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRecordingIsKeptByItsContentWhateverItIsCalled(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var episode = fixture.episode("First").id();
            var upload = uploads.accept(fixture.owner, episode, "../../C:\\music\\band\u202E.mp3", stream(SECOND))
                    .result()
                    .orElseThrow();
            assertThat(upload.originalName()).isEqualTo("band.mp3");
            assertThat(upload.facts().format()).isEqualTo(AudioFormat.WAV);
            assertThat(upload.facts().duration()).isEqualTo(Duration.ofSeconds(1));
            assertThat(upload.blob().sha256()).isEqualTo(Sha256.of(SECOND));
            assertThat(blobs.exists(Sha256.of(SECOND))).isTrue();
            assertThat(uploads.find(upload.id())).contains(upload);
            assertThat(uploads.of(episode)).containsExactly(upload);
            assertThat(fixture.auditedWords()).first().isEqualTo("upload.created");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void allRecordingsOfOneEducatorHaveAnEnd(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = new Uploads(
                    fixture.jdbi,
                    new UploadRepository(fixture.jdbi),
                    fixture.episodes,
                    blobs,
                    fixture.audit,
                    fixture.clock,
                    Uploads.LIMIT,
                    SECOND.length * 5L / 2);
            var episode = fixture.episode("First").id();
            for (int i = 0; i < 2; i++) {
                assertThat(uploads.accept(fixture.owner, episode, "a.wav", stream(SECOND))
                                .problems())
                        .isEmpty();
            }
            assertThat(uploads.accept(fixture.owner, episode, "a.wav", stream(SECOND))
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("catalog.audio.quota");
            assertThat(uploads.of(episode)).hasSize(2);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatIsNoRecordingOrTooLargeOrForeignGetsNoRow(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = new Uploads(
                    fixture.jdbi,
                    new UploadRepository(fixture.jdbi),
                    fixture.episodes,
                    blobs,
                    fixture.audit,
                    fixture.clock,
                    SECOND.length - 1,
                    Uploads.QUOTA);
            var episode = fixture.episode("First").id();
            assertThat(uploads.accept(fixture.owner, episode, "a.wav", stream(new byte[99]))
                            .problems())
                    .containsExactly(FieldProblem.of("file", "catalog.audio.unknown"));
            assertThat(uploads.accept(fixture.owner, episode, "a.wav", stream(SECOND))
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("catalog.audio.too-large");
            assertThat(uploads.accept(fixture.stranger, episode, "a.wav", stream(SECOND))
                            .problems())
                    .containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            assertThat(uploads.of(episode)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatArrivesAfterAccessHasEndedGetsNoRow(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var uploads = fixture.parts.uploads(new BlobFolder(folder, fixture.clock));
            var episode = fixture.episode("First").id();
            var colleagues = new Colleagues(fixture.jdbi, fixture.audit, fixture.clock);
            var series = fixture.series.id();
            fixture.jdbi.useTransaction(
                    handle -> colleagues.enter(handle, fixture.stranger, series, SeriesPart.EDITOR));
            assertThat(uploads.accept(fixture.stranger, episode, "a.wav", stream(SECOND))
                            .problems())
                    .isEmpty();
            var ending = new InputStream() {
                @Override
                public int read() {
                    fixture.jdbi.useTransaction(
                            handle -> colleagues.end(handle, fixture.owner, fixture.stranger, series));
                    return -1;
                }
            };
            assertThat(uploads.accept(
                                    fixture.stranger, episode, "b.wav", new SequenceInputStream(stream(SECOND), ending))
                            .problems())
                    .containsExactly(FieldProblem.of("", "catalog.problem.gone"));
            assertThat(uploads.of(episode)).hasSize(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSweepLeavesWhatARowNames(Database database) throws IOException {
        try (database) {
            var fixture = new CatalogFixture(database);
            var blobs = new BlobFolder(folder, fixture.clock);
            var uploads = fixture.parts.uploads(blobs);
            var episode = fixture.episode("First").id();
            uploads.accept(fixture.owner, episode, "a.wav", stream(SECOND));
            uploads.accept(fixture.owner, episode, "b.wav", stream(new byte[99]));
            fixture.clock.advance(Duration.ofDays(2));
            assertThat(blobs.sweep(uploads::names).setAside()).isEqualTo(1);
            assertThat(blobs.exists(Sha256.of(SECOND))).isTrue();
        }
    }

    @Test
    void aNameIsMadeFitForShowing() {
        assertThat(ShownName.of("take 3.wav")).isEqualTo("take 3.wav");
        assertThat(ShownName.of("a\u0000\n\u2028b.wav")).isEqualTo("ab.wav");
        assertThat(ShownName.of("/")).isEmpty();
        assertThat(ShownName.of("\uD83C\uDFB8".repeat(300))).isEqualTo("\uD83C\uDFB8".repeat(120));
    }

    private static ByteArrayInputStream stream(byte[] bytes) {
        return new ByteArrayInputStream(bytes);
    }
}
