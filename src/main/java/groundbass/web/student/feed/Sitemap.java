package groundbass.web.student.feed;

import groundbass.text.XmlDocument;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Writes the list of the site's pages as the sitemaps protocol 0.9 has it. */
final class Sitemap {
    static final String MEDIA_TYPE = "application/xml; charset=utf-8";
    /** The protocol's limit for one file. */
    static final int MOST = 50_000;

    private static final String NAMESPACE = "http://www.sitemaps.org/schemas/sitemap/0.9";

    private Sitemap() {}

    /** A page, and when it changed last where that is known. */
    record Page(String address, Optional<Instant> changed) {}

    static String of(List<Page> pages) {
        return XmlDocument.of(xml -> xml.element("urlset", set -> {
            set.namespace(NAMESPACE);
            for (var page : pages.subList(0, Math.min(pages.size(), MOST))) {
                set.element("url", url -> {
                    url.text("loc", page.address());
                    if (page.changed().isPresent()) {
                        url.text("lastmod", page.changed().get().toString());
                    }
                });
            }
        }));
    }
}
