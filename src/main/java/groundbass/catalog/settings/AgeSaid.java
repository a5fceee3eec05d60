package groundbass.catalog.settings;

import groundbass.identity.TextValue;
import java.util.Optional;
import java.util.stream.Stream;

/** What somebody says of their age where the site asks: each lets them have an account. */
public enum AgeSaid implements TextValue {
    OF_AGE("of-age"),
    GUARDIAN("guardian");

    private final String value;

    AgeSaid(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }

    public static Optional<AgeSaid> parse(String text) {
        return Stream.of(values()).filter(said -> said.value.equals(text)).findFirst();
    }

    /** The words that were agreed to, as they are kept: which text, which of its two sentences, and the age that it named. */
    public String wording(int age) {
        return "age-1 " + value + " " + age;
    }

    /**
     * Whether what was agreed to still answers the question: a guardian's consent always, an age as long as no higher one is
     * asked for.
     *
     * @param wording as {@link #wording} made it
     */
    public static boolean holds(String wording, int age) {
        String[] words = wording.split(" ");
        return words.length == 3
                && parse(words[1])
                        .map(said -> said == GUARDIAN || Integer.parseInt(words[2]) >= age)
                        .orElse(false);
    }
}
