package groundbass.audience.news;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Duration;
import java.time.Instant;

/** The letter that asks whether somebody really wants the news of a series, in the reader's language. */
record ConfirmLetter(LetterHead head) {
    Mail to(Ask ask, String series, SecretToken token, Instant now, Duration valid) {
        var words = Messages.of(ask.locale());
        String title = Mail.subjectOf(series);
        String link = head.link("news/" + token.value());
        String hours = Long.toString(valid.toHours());
        String text = words.say("news.ask.text", title, head.site(), head.teacher(), head.host(), link, hours);
        return Mail.of(ask.email(), words.say("news.ask.subject", title), text, now)
                .uselessAfter(now.plus(valid));
    }
}
