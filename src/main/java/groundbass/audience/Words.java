package groundbass.audience;

import java.text.MessageFormat;
import java.util.Locale;
import java.util.ResourceBundle;

/** The message bundle in one language; English where that language is not there. */
record Words(Locale locale) {
    private static final ResourceBundle.Control ENGLISH_OTHERWISE =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    String say(String key, Object... values) {
        String pattern = ResourceBundle.getBundle("groundbass.messages", locale, ENGLISH_OTHERWISE)
                .getString(key);
        return new MessageFormat(pattern, locale).format(values);
    }
}
