package groundbass.text;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Properties;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class MessagesTest {
    private static final Properties ENGLISH = read("messages.properties");
    private static final Properties GERMAN = read("messages_de.properties");
    private static final Pattern PLACE = Pattern.compile("\\{(\\d)[^}]*}");

    /** Other names that only musicians of one language have. */
    private static final Pattern OTHER_NAMES = Pattern.compile("walkthrough\\.(british|international)\\..*");

    @Test
    void bothLanguagesHaveTheSameKeys() {
        assertThat(shared(GERMAN)).isEqualTo(shared(ENGLISH));
    }

    private static TreeSet<String> shared(Properties bundle) {
        return bundle.stringPropertyNames().stream()
                .filter(key -> !OTHER_NAMES.matcher(key).matches())
                .collect(Collectors.toCollection(TreeSet::new));
    }

    /** As many, not the same ones: a language may be given a word in two forms and take the one that fits. */
    @Test
    void bothLanguagesFillAsManyPlaces() {
        for (String key : shared(ENGLISH)) {
            assertThat(places(GERMAN, key)).as(key).hasSameSizeAs(places(ENGLISH, key));
        }
    }

    @Test
    void everyMessageIsAPatternWithoutStraightApostrophes() {
        for (var bundle : List.of(ENGLISH, GERMAN)) {
            bundle.forEach((key, text) -> {
                // in a pattern ' quotes what follows: a lost place, and never what was meant
                assertThat((String) text).as((String) key).doesNotContain("'").isNotBlank();
                assertThat(new MessageFormat((String) text, Locale.ROOT)).isNotNull();
            });
        }
    }

    /** Students and educators are spoken to in one way. */
    @Test
    void germanSaysDu() {
        var formal = Pattern.compile("\\p{L}(en|ern|eln) Sie\\b|\\bIhnen\\b|\\bIhre[mnrs]\\b");
        GERMAN.forEach((key, text) ->
                assertThat(formal.matcher((String) text).find()).as("%s", key).isFalse());
    }

    @Test
    void noKeyIsWrittenTwice() throws IOException {
        for (String file : List.of("messages.properties", "messages_de.properties")) {
            assertThat(keysAsWritten(file)).as(file).doesNotHaveDuplicates();
        }
    }

    @Test // CLDR: grouping and decimal signs of German and English
    void fillsPlacesAsTheLanguageWritesNumbers() {
        assertThat(Messages.of(Locale.GERMAN).say("error.overline", 1234.5)).isEqualTo("Fehler 1.234,5");
        assertThat(Messages.of(Locale.ENGLISH).say("error.overline", 1234.5)).isEqualTo("Error 1,234.5");
    }

    @Test
    void aLanguageThatIsNotSpokenReadsEnglishWhateverTheMachineSpeaks() {
        assertThat(Messages.of(Locale.JAPANESE).say("home.newest")).isEqualTo("Newest lessons");
    }

    @Test
    void aMissingKeyIsAMistake() {
        assertThatThrownBy(() -> Messages.of(Locale.ENGLISH).say("no.such.key"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("no.such.key");
    }

    private static TreeSet<String> places(Properties bundle, String key) {
        var places = new TreeSet<String>();
        PLACE.matcher(bundle.getProperty(key, "")).results().forEach(found -> places.add(found.group(1)));
        return places;
    }

    private static List<String> keysAsWritten(String file) throws IOException {
        var keys = new ArrayList<String>();
        try (var in = Messages.class.getResourceAsStream("/groundbass/" + file)) {
            var lines = new String(in.readAllBytes(), StandardCharsets.UTF_8).lines();
            lines.filter(line -> line.matches("[a-zA-Z0-9.-]+\\s*=.*"))
                    .forEach(line ->
                            keys.add(line.substring(0, line.indexOf('=')).strip()));
        }
        return keys;
    }

    private static Properties read(String file) {
        var properties = new Properties();
        try (var in = Messages.class.getResourceAsStream("/groundbass/" + file)) {
            properties.load(new InputStreamReader(in, StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
        return properties;
    }
}
