package groundbass.catalog;

import groundbass.form.FieldProblem;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.IllformedLocaleException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** What several forms ask of a field. */
public final class FieldChecks {
    // The exact grammar is the post's matter; here only what nobody's address can be.
    private static final Pattern EMAIL = Pattern.compile("[^\\s@<>,;]{1,64}@[^\\s@<>,;]{1,189}");

    private static final int LONGEST_ADDRESS = 2000;

    private FieldChecks() {}

    public static boolean isEmail(String text) {
        return EMAIL.matcher(text).matches();
    }

    /** One line that must be there. */
    public static List<FieldProblem> line(String field, String text, int longest) {
        if (text.isBlank()) {
            return List.of(FieldProblem.of(field, "catalog.problem.missing"));
        }
        if (text.chars().anyMatch(Character::isISOControl)) {
            return List.of(FieldProblem.of(field, "catalog.problem.one-line"));
        }
        return text(field, text, longest);
    }

    /** Text of any form that may be missing. */
    public static List<FieldProblem> text(String field, String text, int longest) {
        return text.length() > longest
                ? List.of(FieldProblem.of(field, "catalog.problem.long", text.length(), longest))
                : List.of();
    }

    /** An address on the web that is read in secret (https) and names a host and nobody's password. */
    public static Optional<URI> secureAddress(String text) {
        try {
            var uri = new URI(text);
            boolean plain =
                    "https".equalsIgnoreCase(uri.getScheme()) && uri.getHost() != null && uri.getRawUserInfo() == null;
            return plain && text.length() <= LONGEST_ADDRESS ? Optional.of(uri) : Optional.empty();
        } catch (URISyntaxException e) {
            return Optional.empty();
        }
    }

    /** A language tag (BCP 47) in its usual writing. */
    public static Optional<String> languageTag(String text) {
        try {
            String tag =
                    new Locale.Builder().setLanguageTag(text.strip()).build().toLanguageTag();
            return tag.equals("und") ? Optional.empty() : Optional.of(tag);
        } catch (IllformedLocaleException e) {
            return Optional.empty();
        }
    }
}
