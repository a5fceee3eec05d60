package groundbass.catalog.educator;

import com.nulabinc.zxcvbn.Pattern;
import com.nulabinc.zxcvbn.Strength;
import com.nulabinc.zxcvbn.Zxcvbn;
import com.nulabinc.zxcvbn.matchers.Match;
import groundbass.form.FieldProblem;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Passwords that programs try first: common ones, patterns, words about their owner (NIST SP 800-63B section 5.1.1.2
 * asks for such a list). The lists are those of zxcvbn (MIT licence), loaded for each question and let go afterwards:
 * it is seldom asked, and they would fill ten megabytes for good.
 */
final class GuessedFirst {
    /** Zxcvbn's third of five marks, "safely unguessable": at least a hundred million guesses. */
    private static final int ENOUGH = 3;
    /** Its work grows with the square of the length; what is strong so far is strong. */
    private static final int LOOKED_AT = 64;

    private static final int SHORTEST_WORD = 3;
    private static final String PROGRAM = "groundbass";
    private static final String OWN = "user_inputs";

    private GuessedFirst() {}

    /** What is wrong with the password and what to do, without repeating any of it. */
    static Optional<FieldProblem> problem(String field, String password, List<String> own) {
        String start = password.substring(0, Math.min(password.length(), LOOKED_AT));
        var strength = new Zxcvbn().measure(start, words(own));
        return strength.getScore() >= ENOUGH
                ? Optional.empty()
                : Optional.of(FieldProblem.of(field, "catalog.problem.password." + reason(strength)));
    }

    private static String reason(Strength strength) {
        var found = strength.getSequence();
        if (found.stream().anyMatch(match -> OWN.equals(match.dictionaryName))) {
            return "own";
        }
        return found.stream().anyMatch(GuessedFirst::inList) ? "common" : "pattern";
    }

    private static boolean inList(Match match) {
        return match.pattern == Pattern.Dictionary;
    }

    /** Each whole and in its words. */
    private static List<String> words(List<String> own) {
        var words = new ArrayList<>(List.of(PROGRAM));
        own.stream()
                .map(text -> text.toLowerCase(Locale.ROOT))
                .flatMap(text -> Stream.concat(Stream.of(text), Stream.of(text.split("[^\\p{L}\\p{N}]+"))))
                .filter(word -> word.length() >= SHORTEST_WORD)
                .forEach(words::add);
        return words;
    }
}
