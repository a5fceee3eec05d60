package groundbass.audience.download;

import java.util.List;
import java.util.Locale;

/** Tells programs that visit everything from people, by the words they use of themselves. */
public final class Robots {
    /**
     * General words, and the names that the tools of scripts give themselves (common practice, no source); a list of
     * single robots would be out of date at once.
     */
    private static final List<String> WORDS = List.of(
            "bot", "crawl", "spider", "scrape", "preview", "curl/", "wget/", "python-", "go-http-client", "libwww");

    private Robots() {}

    /** An agent without a name counts as a person: RFC 9110 section 10.1.5 lets people leave it out. */
    public static boolean isRobot(String userAgent) {
        String words = userAgent.toLowerCase(Locale.ROOT);
        return WORDS.stream().anyMatch(words::contains);
    }
}
