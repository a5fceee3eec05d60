package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.answer.CachedResponse;
import groundbass.web.view.PageFrame;
import groundbass.web.view.Reader;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class PageCacheTest {
    private static final int ROOM = 1_000_000;
    private final PageCache pages = new PageCache(ROOM);

    @Test
    void pagesAreWeighedAndNotCounted() {
        for (int i = 0; i < 500; i++) {
            get("page " + i);
            assertThat(pages.bytes()).isLessThanOrEqualTo(ROOM);
        }
        assertThat(pages.bytes()).isGreaterThan(ROOM / 2);
    }

    @Test
    void whatIsAskedForIsRenderedOnce() {
        var rendered = new AtomicInteger();
        for (int i = 0; i < 3; i++) {
            pages.get(key("once"), () -> {
                rendered.incrementAndGet();
                return page();
            });
        }
        assertThat(rendered).hasValue(1);
    }

    private void get(String version) {
        pages.get(key(version), PageCacheTest::page);
    }

    private static CachedResponse page() {
        return CachedResponse.of(new byte[20_000], "application/octet-stream");
    }

    private static PageCache.Key key(String version) {
        var frame = new PageFrame(
                "/",
                "https://bass.example/",
                PageFrame.Place.FRONT,
                "Site",
                false,
                PageFrame.Visitor.NOBODY,
                false,
                Optional.empty());
        return new PageCache.Key("page", version, frame, new Reader(Locale.ENGLISH, ZoneOffset.UTC));
    }
}
