package groundbass.web.general;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import groundbass.web.Html;
import groundbass.web.Site;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;

/**
 * The privacy notice against what the program really stores. Whoever adds a table, a cookie, a store of the browser or a
 * kind of e-mail says in {@link StoredThings} what it keeps, and in the bundles what its reader is told of it.
 */
class StoredThingsTest {
    private static final Pattern TABLE = Pattern.compile("(?im)^create table (\\w+)");
    private static final Pattern DROPPED = Pattern.compile("(?im)^drop table (\\w+)");
    private static final Pattern STORE = Pattern.compile("\\b(localStorage|sessionStorage|indexedDB|caches)\\b");
    private static final Pattern COOKIE = Pattern.compile("new SiteCookie\\(\\s*\"([\\w-]+)\"");

    private static final Pattern SUBJECT = Pattern.compile("(?m)^([\\w.-]+\\.subject)=");

    private static List<KeptThing> things() {
        return Stream.concat(StoredThings.OF_STUDENTS.stream(), StoredThings.OF_EDUCATORS.stream())
                .toList();
    }

    private static Set<String> told(Function<KeptThing, List<String>> part) {
        var told = new TreeSet<String>();
        things().forEach(thing -> told.addAll(part.apply(thing)));
        return told;
    }

    @Test
    void everyTableIsToldOf() {
        var tables = new TreeSet<String>();
        for (String migration : texts(Path.of("migrations"), ".sql")) {
            tables.addAll(found(TABLE, migration));
            tables.removeAll(found(DROPPED, migration));
        }
        var told = told(KeptThing::tables);
        told.addAll(StoredThings.TABLES_OF_LESSONS);
        assertThat(tables).hasSizeGreaterThan(15);
        assertThat(told).isEqualTo(tables);
    }

    @Test
    void everyCookieIsToldOf() {
        var cookies = new TreeSet<String>();
        for (String code : texts(Path.of("src/main/java/groundbass/web"), ".java")) {
            cookies.addAll(found(COOKIE, code));
        }
        assertThat(cookies).contains("session", "flash");
        assertThat(told(KeptThing::cookies)).isEqualTo(cookies);
    }

    /** OWASP ASVS 5.0, 3.3.1: one place knows how a cookie is kept from others. */
    @Test
    void everyCookieIsMadeInOnePlace() {
        var makers = files(Path.of("src/main/java"), ".java").stream()
                .filter(file -> text(file).contains("new Cookie(") || text(file).contains(".cookie(\""))
                .map(file -> file.getFileName().toString())
                .toList();
        assertThat(makers).containsExactly("SiteCookie.java");
    }

    @Test
    void everyStoreOfTheBrowserIsToldOf() {
        var scripts = new TreeSet<String>();
        var sources = Path.of("src/main/browser");
        for (Path script : files(sources, ".js")) {
            if (STORE.matcher(text(script)).find()) {
                scripts.add(sources.relativize(script).toString());
            }
        }
        assertThat(scripts).contains("sheet.js");
        assertThat(told(KeptThing::stores)).isEqualTo(scripts);
    }

    @Test
    void everyKindOfLetterIsToldOf() {
        var subjects =
                new TreeSet<>(found(SUBJECT, text(Path.of("src/main/resources/groundbass/messages.properties"))));
        subjects.remove("imprint.rights.subject"); // written by a reader, not by us
        assertThat(subjects).contains("audience.signin.subject");
        assertThat(told(KeptThing::letters)).isEqualTo(subjects);
    }

    @Test
    void everyThingHasItsWordsAndIsOnThePage() {
        var messages = Messages.of(Locale.ENGLISH);
        try (var site = Site.open()) {
            String page = site.browser().get("/privacy").asString();
            assertThat(Html.mistakes(page)).isEmpty();
            assertThat(things()).isNotEmpty().allSatisfy(thing -> {
                assertThat(messages.has(thing.key())).as(thing.key()).isTrue();
                assertThat(Jsoup.parse(page).text()).contains(messages.say(thing.key()));
            });
        }
    }

    private static Set<String> found(Pattern pattern, String text) {
        var found = new TreeSet<String>();
        var matcher = pattern.matcher(text);
        while (matcher.find()) {
            found.add(matcher.group(1));
        }
        return found;
    }

    private static List<String> texts(Path folder, String ending) {
        return files(folder, ending).stream().map(StoredThingsTest::text).toList();
    }

    private static List<Path> files(Path folder, String ending) {
        try (var all = Files.walk(folder)) {
            return all.filter(path -> path.toString().endsWith(ending)).sorted().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
