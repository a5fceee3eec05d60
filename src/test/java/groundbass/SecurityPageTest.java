package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.colleague.Invitations;
import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.PreviewLinks;
import groundbass.audience.student.SignIns;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesPart;
import groundbass.catalog.upload.Pictures;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Uploads;
import groundbass.intake.Intake;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** The page about what guards a site says what the program does. */
class SecurityPageTest {
    private static final String PAGE = read(Path.of("src/main/docs/security.md"));
    private static final Path CODE = Path.of("src/main/java");
    private static final Pattern TABLE = Pattern.compile("(?im)^create table (\\w+)");
    private static final Pattern DROPPED = Pattern.compile("(?im)^drop table (\\w+)");
    private static final Pattern LEVEL =
            Pattern.compile("(?m)^\\| (secret|personal|unpublished|open) \\| [^|]+ \\| ([^|]+) \\|$");
    private static final Pattern NAME = Pattern.compile("`(\\w+)`");
    private static final Pattern KEY = Pattern.compile("\"(secret\\.[\\w-]+)\"");
    private static final Pattern ALGORITHM =
            Pattern.compile("\"(MD\\d|SHA-?\\d+|Hmac\\w+|AES[\\w/]*|RSA\\w*|EC\\w*|Ed\\d+|ChaCha\\w*|DES\\w*)\"");
    private static final Pattern OPENS = Pattern.compile(
            "new Socket\\(|\\.createSocket\\(|DriverManager\\.getConnection|Transport\\b.*connect|HttpClient\\.new|S3Client\\.");

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<Path> files(Path folder, String ending) {
        try (var all = Files.walk(folder)) {
            return all.filter(file -> file.toString().endsWith(ending)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Set<String> found(Pattern pattern, String text) {
        return pattern.matcher(text).results().map(one -> one.group(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    private static Set<String> inCode(Pattern pattern) {
        return files(CODE, ".java").stream()
                .flatMap(file -> found(pattern, read(file)).stream())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    private static String section(String heading) {
        int from = PAGE.indexOf("\n## " + heading + "\n");
        assertThat(from).as(heading).isNotNegative();
        int next = PAGE.indexOf("\n## ", from + 1);
        return PAGE.substring(from, next < 0 ? PAGE.length() : next);
    }

    /** OWASP ASVS 5.0, 6.1.3: the last column of a way in. */
    @Test
    void waysInLastAsLongAsThePageSays() {
        String ways = section("Ways in");
        assertThat(ways)
                .contains("works once | " + EducatorAccess.VALID.toMinutes() + " minutes |")
                .contains("works once | " + SignIns.VALID.toMinutes() + " minutes |")
                .contains("works once | " + Invitations.VALID.toDays() + " days |")
                .contains("| " + PreviewLinks.LONGEST.toDays() + " days at most |")
                .contains(ProgramTokens.MOST + " at most for each desk | "
                        + ProgramTokens.DAYS.get(0) + ", " + ProgramTokens.DAYS.get(1) + " or "
                        + ProgramTokens.DAYS.get(2) + " days |");
    }

    /** 2.1.3 and 5.1.1. */
    @Test
    void sizesAreThoseOfTheProgram() {
        long million = 1_000_000;
        assertThat(section("Limits"))
                .contains("one address | " + SignIns.MOST_PER_HOUR + " in an hour")
                .contains("new password | " + EducatorAccess.MOST_PER_HOUR + " in an hour")
                .contains(Uploads.LIMIT / million + " MB each, " + Uploads.QUOTA / (1000 * million) + " GB for one")
                .contains(Pictures.LIMIT / million + " MB each as sent, " + Pictures.MOST + " for one lesson")
                .contains("| " + DocumentCheck.MOST_EXERCISES + ", " + DocumentCheck.MOST_COURSES + " |");
        assertThat(section("Files that come in"))
                .contains("| " + Uploads.LIMIT / million + " MB |")
                .contains("| " + Pictures.LIMIT / million + " MB |")
                .contains("| " + (Intake.LARGEST >> 20) + " MiB |");
    }

    /** 8.1.2: a row for each deed, a column for each part in the order of the page. */
    @Test
    void whoMayWhatInASeriesIsToldOfEachPart() {
        var parts = List.of(SeriesPart.OWNER, SeriesPart.EDITOR, SeriesPart.READER_OF_FIGURES);
        assertThat(parts).containsExactly(SeriesPart.values());
        for (var deed : Deed.values()) {
            var row = section("Who sees what")
                    .lines()
                    .filter(line -> line.contains("(`" + deed.name() + "`)"))
                    .findFirst()
                    .orElseThrow(() -> new AssertionError(deed));
            var cells = row.split("\\|");
            for (int i = 0; i < parts.size(); i++) {
                boolean may = !cells[i + 2].strip().equals("–");
                assertThat(may)
                        .as(deed + " " + parts.get(i))
                        .isEqualTo(parts.get(i).may(deed));
            }
        }
    }

    /** 14.1.1. */
    @Test
    void everyTableHasOneLevel() {
        var tables = new TreeSet<String>();
        for (Path migration : files(Path.of("migrations"), ".sql")) {
            tables.addAll(found(TABLE, read(migration)));
            tables.removeAll(found(DROPPED, read(migration)));
        }
        var told = LEVEL.matcher(section("What is sensitive"))
                .results()
                .flatMap(level -> NAME.matcher(level.group(2)).results().map(name -> name.group(1)))
                .toList();
        assertThat(told).doesNotHaveDuplicates().containsExactlyInAnyOrderElementsOf(tables);
    }

    /** 14.1.2 and 16.1.1. */
    @Test
    void timesOfKeepingAreThoseOfTheProgram() {
        assertThat(section("What is sensitive")).contains("throws it away, and " + TakingOut.KEPT.toDays() + " days |");
        assertThat(section("Logs")).contains("sign-ins and refusals " + Audit.SIGN_INS_KEPT.toDays() + " days |");
    }

    /** 11.1.1. */
    @Test
    void everyKeyOfTheSiteIsNamed() {
        var keys = inCode(KEY);
        assertThat(keys).hasSizeGreaterThan(2);
        assertThat(found(Pattern.compile("\\| `(secret\\.[\\w-]+)` \\|"), section("Cryptography")))
                .isEqualTo(keys);
    }

    /** 11.1.2: what is asked of the JDK by its name. */
    @Test
    void everyAlgorithmIsNamed() {
        var algorithms = inCode(ALGORITHM);
        assertThat(algorithms).contains("SHA-256", "HmacSHA256");
        assertThat(algorithms).allMatch(section("Cryptography")::contains);
    }

    /** 13.1.1: whatever opens a connection. */
    @Test
    void whateverCallsAnotherMachineIsNamed() {
        var callers = files(CODE, ".java").stream()
                .filter(file -> OPENS.matcher(read(file)).find())
                .map(file -> file.getFileName().toString().replace(".java", ""))
                .toList();
        assertThat(callers).contains("FirstConnection", "Bucket", "LinkTrial");
        assertThat(callers).allMatch(caller -> section("Connections").contains("`" + caller + "`"));
    }

    /** 16.2.3: the log goes to one place. */
    @Test
    void theLogGoesNowhereButToStandardError() {
        String log = read(Path.of("src/main/resources/logback.xml"));
        assertThat(found(Pattern.compile("<appender name=\"(\\w+)\""), log)).containsExactly("console");
        assertThat(log).contains("<target>System.err</target>");
    }

    /** What {@link AsvsTableTest} takes from a heading must be there. */
    @Test
    void everySectionIsThere() {
        Stream.of("Sessions", "What is dear, and how it is held", "What is typed", "Libraries")
                .forEach(heading -> assertThat(section(heading).lines().count())
                        .as(heading.toLowerCase(Locale.ROOT))
                        .isGreaterThan(5));
    }

    /** Classes that the page names are there. */
    @Test
    void everyClassThatItNamesIsThere() {
        var ours = files(Path.of("src"), ".java").stream()
                .map(file -> file.getFileName().toString().replace(".java", ""))
                .collect(Collectors.toSet());
        var named = found(Pattern.compile("`([A-Z][a-z0-9]+[A-Za-z0-9]*)`"), PAGE);
        named.removeAll(Set.of(
                "SecureRandom",
                "HmacSHA256",
                "Authorization",
                "Secure",
                "HttpOnly",
                "SystemMaxUse",
                "MaxRetentionSec"));
        assertThat(named).hasSizeGreaterThan(15).allMatch(ours::contains);
    }
}
