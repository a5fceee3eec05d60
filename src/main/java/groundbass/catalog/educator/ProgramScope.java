package groundbass.catalog.educator;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/** What a program may do for an educator (a scope of RFC 6749 section 3.3). None of them includes another. */
public enum ProgramScope {
    /** Read series, lessons, drafts, what is to be said of them, and the files of releases. */
    READ,
    /** Begin lessons, change drafts, send recordings. */
    WRITE,
    /** Promise hours, bring lessons out, take them back. */
    PUBLISH,
    /** Read how often what was taken; never by whom. */
    STATISTICS;

    /** As requests, answers and rows name it. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    public static Optional<ProgramScope> parse(String word) {
        return Stream.of(values()).filter(scope -> scope.word().equals(word)).findFirst();
    }
}
