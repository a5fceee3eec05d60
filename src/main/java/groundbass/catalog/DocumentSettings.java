package groundbass.catalog;

import groundbass.walkthrough.Naming;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * How the files of an episode are made.
 *
 * @param language IETF language tag (BCP 47) of sheet and walkthrough
 * @param tempos   as typed: percentages of the line's tempo at which practice files are made, "60 75 100"
 * @param naming   how the walkthrough names notes and note lengths, by the names of {@link Naming}
 */
public record DocumentSettings(String language, String tempos, String naming) {
    public static final DocumentSettings USUAL = new DocumentSettings("en", "60 75 90 100");

    private static final Pattern SEPARATOR = Pattern.compile("[\\s,;%]+");
    private static final Pattern PERCENT = Pattern.compile("[0-9]{1,3}");

    public DocumentSettings {
        Objects.requireNonNull(language);
        Objects.requireNonNull(tempos);
        Objects.requireNonNull(naming);
    }

    /** Settings with the language's usual names. */
    public DocumentSettings(String language, String tempos) {
        this(language, tempos, Naming.USUAL.word());
    }

    /** The tempos that can be read, each once, slowest first; {@link DocumentCheck} tells of the others. */
    public List<Integer> tempoPercents() {
        return tempoWords()
                .filter(DocumentSettings::isPercent)
                .map(Integer::valueOf)
                .distinct()
                .sorted()
                .toList();
    }

    /** Whether a word is a tempo from 20 to 200 percent. */
    static boolean isPercent(String word) {
        return PERCENT.matcher(word).matches() && Integer.parseInt(word) >= 20 && Integer.parseInt(word) <= 200;
    }

    /** The words that are typed as tempos, right or wrong. */
    Stream<String> tempoWords() {
        return SEPARATOR.splitAsStream(tempos).filter(word -> !word.isEmpty());
    }
}
