package groundbass.audience.question;

import groundbass.identity.TextValue;
import groundbass.text.Message;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A bar of a line, or a count of it: {@code 3}, {@code 3.2&}, as the page's fields have them. */
public record AskedPlace(String value) implements TextValue {
    private static final Pattern FORM = Pattern.compile("([0-9]{1,4})(?:\\.([0-9]{1,2}[e&a]?))?");

    public AskedPlace {
        if (!FORM.matcher(value).matches()) {
            throw new IllegalArgumentException("no place of a line: " + value);
        }
    }

    /** Reads what somebody typed; empty where it is no place. */
    public static Optional<AskedPlace> read(String text) {
        String plain = text.replaceAll("\\s", "").toLowerCase(Locale.ROOT);
        return FORM.matcher(plain).matches() ? Optional.of(new AskedPlace(plain)) : Optional.empty();
    }

    /** Its number. */
    public int bar() {
        return Integer.parseInt(part(1).orElseThrow());
    }

    /** Empty where the whole bar is meant. */
    public Optional<String> count() {
        return part(2);
    }

    Message inWords() {
        return count().map(count -> Message.of("question.at.count", bar(), count))
                .orElseGet(() -> Message.of("question.at.bar", bar()));
    }

    private Optional<String> part(int group) {
        Matcher found = FORM.matcher(value);
        return found.matches() ? Optional.ofNullable(found.group(group)) : Optional.empty();
    }
}
