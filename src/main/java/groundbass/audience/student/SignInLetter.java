package groundbass.audience.student;

import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/** The letter that carries a sign-in link, in the reader's language. */
record SignInLetter(LetterHead head) {
    Mail to(EmailAddress reader, Locale locale, SecretToken token, SignInCode code, Instant now, Duration valid) {
        var words = Messages.of(locale);
        String minutes = Long.toString(valid.toMinutes());
        String link = head.link("sign-in/" + token.value());
        String text = words.say(
                "audience.signin.text", head.site(), head.teacher(), head.host(), link, minutes, code.digits());
        return Mail.of(reader, words.say("audience.signin.subject", head.site()), text, now)
                .uselessAfter(now.plus(valid));
    }
}
