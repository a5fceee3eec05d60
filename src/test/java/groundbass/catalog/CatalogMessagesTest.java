package groundbass.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.BackingTrack;
import groundbass.document.Level;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CatalogMessagesTest {
    private static final Path AUDIO_ROOM = Path.of("src/main/java/groundbass/audio");
    private static final Pattern KEY =
            Pattern.compile("\"(catalog\\.problem\\.[a-z.-]+[a-z]|catalog\\.audio\\.[a-z.-]+[a-z])\"");
    private static final Pattern AUDIO = Pattern.compile("(?<!Outcome\\.)refused\\(\"([a-z0-9.-]+)\"");

    @ParameterizedTest
    @ValueSource(strings = {"messages.properties", "messages_de.properties"})
    void everyProblemHasItsWords(String bundle) throws IOException {
        assertThat(catalogKeys(bundle)).containsAll(keysInSources());
        for (Level level : Level.values()) {
            assertThat(catalogKeys(bundle)).contains(level.messageKey());
        }
        for (BackingTrack.Kind kind : BackingTrack.Kind.values()) {
            assertThat(catalogKeys(bundle)).contains(kind.messageKey());
        }
    }

    @Test
    void bothLanguagesSayTheSameThings() throws IOException {
        assertThat(catalogKeys("messages_de.properties")).isEqualTo(catalogKeys("messages.properties"));
    }

    private static Set<String> catalogKeys(String bundle) throws IOException {
        var properties = new Properties();
        try (var in = Files.newBufferedReader(Path.of("src/main/resources/groundbass", bundle))) {
            properties.load(in);
        }
        var keys = new TreeSet<>(properties.stringPropertyNames());
        keys.removeIf(key -> !key.startsWith("catalog."));
        return keys;
    }

    private static Set<String> keysInSources() throws IOException {
        Set<String> keys = new TreeSet<>();
        for (Path file : sources()) {
            String source = Files.readString(file, StandardCharsets.UTF_8);
            keys.addAll(found(KEY, source));
            if (file.startsWith(AUDIO_ROOM)) {
                found(AUDIO, source).forEach(key -> keys.add("catalog.audio." + key));
            }
        }
        assertThat(keys).as("the search itself finds keys").hasSizeGreaterThan(30);
        return keys;
    }

    private static List<Path> sources() throws IOException {
        try (Stream<Path> catalog = Files.walk(Path.of("src/main/java/groundbass/catalog"));
                Stream<Path> audio = Files.walk(AUDIO_ROOM)) {
            return Stream.concat(catalog, audio).filter(Files::isRegularFile).toList();
        }
    }

    private static Set<String> found(Pattern pattern, String source) {
        Set<String> found = new TreeSet<>();
        pattern.matcher(source)
                .results()
                .map((MatchResult match) -> match.group(1))
                .forEach(found::add);
        return found;
    }
}
