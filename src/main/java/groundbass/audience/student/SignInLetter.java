package groundbass.audience.student;

import groundbass.post.EmailAddress;
import groundbass.post.Message;
import groundbass.text.Messages;
import java.net.URI;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/** The letter that carries a sign-in link, in the reader's language. */
record SignInLetter(URI publicAddress) {
    Message to(EmailAddress reader, Locale locale, Token token, Instant now, Duration valid) {
        var words = Messages.of(locale);
        String site = publicAddress.getAuthority();
        String minutes = Long.toString(valid.toMinutes());
        String text = words.say("audience.signin.text", site, link(token), minutes);
        return Message.of(reader, words.say("audience.signin.subject", site), text, now)
                .uselessAfter(now.plus(valid));
    }

    private String link(Token token) {
        String base = publicAddress.toString();
        return (base.endsWith("/") ? base : base + "/") + "sign-in/" + token.value();
    }
}
