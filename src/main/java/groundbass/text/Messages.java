package groundbass.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/**
 * The message bundles {@code groundbass/messages*.properties} in one language. Every text is a
 * {@link MessageFormat}, with or without places to fill; write an apostrophe as ’, never as '. Immutable, thread-safe.
 *
 * <p>Places take text and numbers. A date or time is formatted by the caller, who knows the reader's zone.
 */
public final class Messages {
    private static final String BUNDLE = "groundbass.messages";
    // without this the machine's own language would win over English for a key that is missing
    private static final ResourceBundle.Control NO_FALLBACK =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    private final Locale locale;
    private final ResourceBundle bundle;

    private Messages(Locale locale) {
        this.locale = locale;
        this.bundle = ResourceBundle.getBundle(BUNDLE, locale, NO_FALLBACK);
    }

    /** The messages of {@code locale}; a language that is not spoken reads English. */
    public static Messages of(Locale locale) {
        return new Messages(locale);
    }

    public Locale locale() {
        return locale;
    }

    public boolean has(String key) {
        return bundle.containsKey(key);
    }

    /** The text of {@code key}; a key that no bundle has is the caller's mistake. */
    public String say(String key, Object... args) {
        if (!has(key)) {
            throw new IllegalArgumentException("no message has the key " + key);
        }
        return new MessageFormat(bundle.getString(key), locale).format(args);
    }

    public String say(Message message) {
        return say(message.key(), message.args().toArray());
    }
}
