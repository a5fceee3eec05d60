package groundbass.audience.student;

import groundbass.catalog.educator.Educator;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Duration;
import java.time.Instant;
import java.util.Locale;

/** What an educator is written about the way to their own desk. */
record AccessLetters(LetterHead head, Locale locale) {
    /** The letter that carries a link to choose a new password with. */
    Mail reset(Educator educator, EmailAddress to, SecretToken token, Instant now, Duration valid) {
        String link = head.link("desk/reset/" + token.value());
        String minutes = Long.toString(valid.toMinutes());
        return Mail.of(
                        to,
                        say("audience.reset.subject", head.site()),
                        say("audience.reset.text", educator.name(), head.site(), head.host(), link, minutes),
                        now)
                .uselessAfter(now.plus(valid));
    }

    /** Told afterwards, so that somebody who did not do it themselves learns of it. */
    Mail passwordChanged(Educator educator, EmailAddress to, Instant now) {
        return Mail.of(
                to,
                say("audience.password.subject", head.site()),
                say("audience.password.text", educator.name(), head.site(), head.link("desk/forgotten")),
                now);
    }

    /** Goes to the address that was there before. */
    Mail addressChanged(Educator educator, EmailAddress before, Instant now) {
        return Mail.of(
                before,
                say("audience.address.subject", head.site()),
                say("audience.address.text", educator.name(), head.site(), head.host()),
                now);
    }

    private String say(String key, Object... args) {
        return Messages.of(locale).say(key, args);
    }
}
