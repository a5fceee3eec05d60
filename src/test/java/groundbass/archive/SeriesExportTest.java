package groundbass.archive;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.publishing.BuildSpecs;
import groundbass.release.BuildState;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.store.Blob;
import groundbass.store.Blobs;
import groundbass.store.BothDatabases;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A large series goes through in a stream. */
class SeriesExportTest {
    private static final int LESSONS = 200;
    private static final int SIZE = 200_000;

    /** Bytes that were read from the store and not written yet: what the zip and its compressor hold. */
    private static final long HELD_AT_MOST = 100_000;

    @TempDir
    Path folder;

    @Test
    void twoHundredLessonsAreNeverHeldInMemory() throws IOException {
        try (var database = BothDatabases.freshH2()) {
            var site = new ArchiveSite(database, folder);
            var series = site.series();
            byte[] sound = new byte[SIZE];
            new Random(3).nextBytes(sound); // a seed, so that it is the same each time; noise does not shrink
            var blob = site.blobs.put(sound);
            for (int i = 1; i <= LESSONS; i++) {
                release(site, site.write(series, "Lesson " + i, edit -> edit), blob);
            }
            var flow = new Flow();
            var parts = site.archive;
            var watched = new ArchiveParts(
                    parts.jdbi(),
                    parts.clock(),
                    parts.audit(),
                    parts.settings(),
                    parts.catalog(),
                    parts.styles(),
                    parts.rhythms(),
                    parts.outlooks(),
                    parts.beginnings(),
                    parts.news(),
                    parts.episodes(),
                    parts.desk(),
                    parts.revisions(),
                    parts.uploads(),
                    parts.releases(),
                    flow.watch(site.blobs));
            var written = export(watched, series, flow);
            assertThat(written.lessons()).isEqualTo(LESSONS);
            assertThat(flow.read.get()).isEqualTo((long) LESSONS * SIZE);
            assertThat(flow.heldAtMost.get()).isBetween(1L, HELD_AT_MOST);
        }
    }

    private static SeriesExport.Written export(ArchiveParts parts, Series series, Flow flow) throws IOException {
        return new SeriesExport(parts).writeTo(series, new OutputStream() {
            @Override
            public void write(int one) {
                flow.written.incrementAndGet();
            }

            @Override
            public void write(byte[] bytes, int from, int length) {
                flow.written.addAndGet(length);
            }
        });
    }

    private static void release(ArchiveSite site, Episode lesson, Blob blob) {
        var revision = ArchiveSite.done(site.parts.desk().makeRevision(site.owner, lesson.id(), ""));
        var specs = new BuildSpecs(
                site.parts.catalog(), site.archive.styles(), site.parts.releases(), () -> "https://example.org");
        site.parts.jdbi().useTransaction(handle -> {
            var release = new Release(
                    ReleaseId.next(),
                    lesson.id(),
                    specs.of(handle, lesson, revision),
                    new BuildState.Ready(),
                    site.clock.instant(),
                    Optional.of(site.clock.instant()),
                    ReleaseNote.NONE);
            var file = new ReleaseFile("line.mp3", FileRole.PRACTICE, "audio/mpeg", blob.length(), blob.sha256());
            site.parts.releases().enter(handle, release, List.of(file));
        });
    }

    /** What comes out of the store and what goes into the zip. */
    private static final class Flow {
        private final AtomicLong read = new AtomicLong();
        private final AtomicLong written = new AtomicLong();
        private final AtomicLong heldAtMost = new AtomicLong();

        /** Texts are written, too, so more is written than was read: what is held is counted file by file. */
        Blobs watch(Blobs blobs) {
            return (Blobs) Proxy.newProxyInstance(
                    Blobs.class.getClassLoader(), new Class<?>[] {Blobs.class}, (proxy, method, arguments) -> {
                        try {
                            Object answer = method.invoke(blobs, arguments);
                            return answer instanceof InputStream in ? counted(in) : answer;
                        } catch (InvocationTargetException e) {
                            throw e.getCause();
                        }
                    });
        }

        private InputStream counted(InputStream in) {
            long before = written.get();
            return new FilterInputStream(in) {
                private long here;

                @Override
                public int read(byte[] bytes, int from, int length) throws IOException {
                    int got = super.read(bytes, from, length);
                    here += Math.max(0, got);
                    read.addAndGet(Math.max(0, got));
                    heldAtMost.accumulateAndGet(here - (written.get() - before), Math::max);
                    return got;
                }
            };
        }
    }
}
