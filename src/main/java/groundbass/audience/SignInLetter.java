package groundbass.audience;

import groundbass.post.EmailAddress;
import groundbass.post.Message;
import java.net.URI;
import java.text.MessageFormat;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;
import java.util.ResourceBundle;

/** The letter that carries a sign-in link, in the reader's language. */
record SignInLetter(URI publicAddress) {
    private static final ResourceBundle.Control ENGLISH_OTHERWISE =
            ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES);

    Message to(EmailAddress reader, Locale locale, Token token, Instant now, Duration valid) {
        String text = text(locale, "audience.signin.text", site(), link(token), Long.toString(valid.toMinutes()));
        return Message.of(reader, text(locale, "audience.signin.subject", site()), text, now)
                .uselessAfter(now.plus(valid));
    }

    private String link(Token token) {
        String base = publicAddress.toString();
        return (base.endsWith("/") ? base : base + "/") + "sign-in/" + token.value();
    }

    private String site() {
        return publicAddress.getAuthority();
    }

    private static String text(Locale locale, String key, Object... values) {
        String pattern = ResourceBundle.getBundle("groundbass.messages", locale, ENGLISH_OTHERWISE)
                .getString(key);
        return new MessageFormat(pattern, locale).format(values);
    }
}
