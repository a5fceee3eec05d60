package groundbass.cli;

import groundbass.text.Languages;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import java.util.Arrays;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The language in which a command speaks of music. */
final class Language {
    @Option(
            names = "--language",
            paramLabel = "TAG",
            description = "Of the words: en, en-GB or de.",
            converter = Spoken.class)
    private Locale language = Locale.ENGLISH;

    /** Reads the tag of a language that the messages speak, or of British English. */
    static final class Spoken implements ITypeConverter<Locale> {
        @Override
        public Locale convert(String text) {
            return all().filter(spoken -> spoken.toLanguageTag().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is none of "
                            + all().map(Locale::toLanguageTag).collect(Collectors.joining(", "))));
        }

        private static Stream<Locale> all() {
            return Stream.concat(Languages.SPOKEN.stream(), Stream.of(Locale.UK));
        }
    }

    /** Reads the word of a naming. */
    static final class Names implements ITypeConverter<Naming> {
        @Override
        public Naming convert(String text) {
            return Naming.parse(text)
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is none of "
                            + Arrays.stream(Naming.values()).map(Naming::word).collect(Collectors.joining(", "))));
        }
    }

    Messages messages() {
        return Messages.of(Languages.spoken(language));
    }

    /** The names that go without saying. */
    Naming naming() {
        return language.equals(Locale.UK) ? Naming.BRITISH : Naming.USUAL;
    }

    boolean has(Naming naming) {
        return naming.isSpokenIn(language);
    }
}
