package groundbass.web.view;

import groundbass.text.Languages;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/** A language to choose, named in itself. */
public record LanguageRow(String tag, String name) {
    private static final List<LanguageRow> SPOKEN =
            Languages.SPOKEN.stream().map(LanguageRow::of).toList();

    /** Those that are spoken; {@code chosen} too, where it is another, so that no form changes what was chosen. */
    public static List<LanguageRow> with(String chosen) {
        boolean known = SPOKEN.stream().anyMatch(language -> language.tag().equals(chosen));
        return known || chosen.isBlank()
                ? SPOKEN
                : Stream.concat(Stream.of(new LanguageRow(chosen, chosen)), SPOKEN.stream())
                        .toList();
    }

    private static LanguageRow of(Locale language) {
        return new LanguageRow(language.toLanguageTag(), language.getDisplayLanguage(language));
    }
}
