package groundbass.web.student.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.identity.Sha256;
import groundbass.release.ReleaseId;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.web.Site;
import groundbass.web.student.Shelf;
import java.io.IOException;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** A long list asks what language each lesson is in, where the memory for what pages say may be full of other pages. */
class ReleaseContentsTest {
    static final Site site = Site.open();
    static final Shelf shelf = Shelf.fill(site);

    @AfterAll
    static void close() {
        site.close();
    }

    @Test
    void thePageIsReadForItsLanguageOnce() throws IOException {
        var opened = new ArrayList<Object>();
        var contents = new ReleaseContents(shelf.releases, noting(opened), 0);
        for (int i = 0; i < 1_000; i++) {
            for (int number : List.of(1, 2)) {
                assertThat(contents.language(release(number))).isEqualTo("en");
            }
        }
        assertThat(opened).hasSize(2).doesNotHaveDuplicates();
    }

    /** It is mended meanwhile, and then has a language. */
    @Test
    void aPageThatCannotBeReadIsAskedAgain() throws IOException {
        var contents = new ReleaseContents(shelf.releases, blobs(), 0);
        Path page = blobs().path(digest(release(1)));
        byte[] good = Files.readAllBytes(page);
        Files.delete(page);
        assertThat(contents.language(release(1))).isEmpty();
        Files.write(page, good);
        assertThat(contents.language(release(1))).isEqualTo("en");
    }

    private static ReleaseId release(int number) {
        return shelf.current(number).id();
    }

    private static Sha256 digest(ReleaseId release) {
        return shelf.releases.files().named(release, "page.json").orElseThrow().sha256();
    }

    private static BlobFolder blobs() throws IOException {
        return new BlobFolder(site.data().resolve("files"), site.clock());
    }

    /** The site's files; the digest of each that is opened is noted. */
    private static Blobs noting(List<Object> opened) throws IOException {
        var files = blobs();
        Class<?>[] faces = {Blobs.class};
        return (Blobs) Proxy.newProxyInstance(Blobs.class.getClassLoader(), faces, (proxy, method, arguments) -> {
            if (method.getName().equals("open")) {
                opened.add(arguments[0]);
            }
            try {
                return method.invoke(files, arguments);
            } catch (InvocationTargetException e) {
                throw e.getCause();
            }
        });
    }
}
