package groundbass.cli;

import groundbass.text.Languages;
import groundbass.text.Messages;
import java.util.Locale;
import java.util.stream.Collectors;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;

/** The language in which a command speaks of music. */
final class Language {
    @Option(names = "--language", paramLabel = "TAG", description = "Of the words: en or de.", converter = Spoken.class)
    private Locale language = Locale.ENGLISH;

    /** Reads the tag of a language that the messages speak. */
    static final class Spoken implements ITypeConverter<Locale> {
        @Override
        public Locale convert(String text) {
            return Languages.SPOKEN.stream()
                    .filter(spoken -> spoken.toLanguageTag().equals(text))
                    .findFirst()
                    .orElseThrow(() -> new TypeConversionException("'" + text + "' is neither " + tags()));
        }

        private static String tags() {
            return Languages.SPOKEN.stream().map(Locale::toLanguageTag).collect(Collectors.joining(" nor "));
        }
    }

    Messages messages() {
        return Messages.of(language);
    }
}
