package groundbass.document;

import groundbass.walkthrough.words.Naming;
import java.util.List;
import java.util.Objects;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * How the files of an episode are made.
 *
 * @param language IETF language tag (BCP 47) of sheet and walkthrough
 * @param tempos   as typed: percentages of the line's tempo at which practice files are made, "60 75 100"
 * @param rounds   as typed: how often a practice file goes through the line, "2"
 * @param naming   how the walkthrough names notes and note lengths, by the names of {@link Naming}
 */
public record DocumentSettings(String language, String tempos, String rounds, String naming) {
    public static final DocumentSettings USUAL = new DocumentSettings("en", "50 60 70 80 90 100");

    private static final String USUAL_ROUNDS = "2";
    private static final Pattern ROUNDS = Pattern.compile("[1-8]");
    private static final Pattern SEPARATOR = Pattern.compile("[\\s,;%]+");
    private static final Pattern PERCENT = Pattern.compile("[0-9]{1,3}");

    public DocumentSettings {
        Objects.requireNonNull(language);
        Objects.requireNonNull(tempos);
        Objects.requireNonNull(rounds);
        Objects.requireNonNull(naming);
    }

    /** Settings with the usual rounds and the language's usual names. */
    public DocumentSettings(String language, String tempos) {
        this(language, tempos, USUAL_ROUNDS, Naming.USUAL.word());
    }

    /** The tempos that can be read, each once, slowest first; {@code DocumentCheck} tells of the others. */
    public List<Integer> tempoPercents() {
        return tempoWords()
                .filter(DocumentSettings::isPercent)
                .map(Integer::valueOf)
                .distinct()
                .sorted()
                .toList();
    }

    /** How often a practice file goes through the line: the usual number where none can be read. */
    public int roundsNumber() {
        return Integer.parseInt(hasRounds() ? rounds.strip() : USUAL_ROUNDS);
    }

    /** Whether a number from 1 to 8 was typed. */
    public boolean hasRounds() {
        return ROUNDS.matcher(rounds.strip()).matches();
    }

    /** Whether a word is a tempo from 20 to 200 percent. */
    public static boolean isPercent(String word) {
        return PERCENT.matcher(word).matches() && Integer.parseInt(word) >= 20 && Integer.parseInt(word) <= 200;
    }

    /** The words that are typed as tempos, right or wrong. */
    public Stream<String> tempoWords() {
        return SEPARATOR.splitAsStream(tempos).filter(word -> !word.isEmpty());
    }
}
