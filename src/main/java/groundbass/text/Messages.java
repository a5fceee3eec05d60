package groundbass.text;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.Map;
import java.util.ResourceBundle;
import java.util.concurrent.ConcurrentHashMap;

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

    // a page or a walkthrough says hundreds of texts, and to parse a pattern takes longer than to fill it
    private static final Map<Locale, Messages> SPOKEN = new ConcurrentHashMap<>();

    private final Locale locale;
    private final ResourceBundle bundle;
    private final Map<String, MessageFormat> formats = new ConcurrentHashMap<>();

    private Messages(Locale locale) {
        this.locale = locale;
        this.bundle = ResourceBundle.getBundle(BUNDLE, locale, NO_FALLBACK);
    }

    /** The messages of {@code locale}; a language that is not spoken reads English. */
    public static Messages of(Locale locale) {
        return Languages.SPOKEN.contains(locale) ? SPOKEN.computeIfAbsent(locale, Messages::new) : new Messages(locale);
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
        var format = formats.computeIfAbsent(key, name -> new MessageFormat(bundle.getString(name), locale));
        synchronized (format) { // a MessageFormat keeps state while it formats
            return format.format(args);
        }
    }

    /** Says a message; what fills its places may be messages too. */
    public String say(Message message) {
        return say(
                message.key(),
                message.args().stream()
                        .map(arg -> arg instanceof Message part ? say(part) : arg)
                        .toArray());
    }
}
