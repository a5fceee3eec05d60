package groundbass.audience.colleague;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/** What people are written about invitations, and about what they have given away. */
record InvitationLetters(LetterHead head, Locale locale) {
    /**
     * The letter that carries the link of an invitation.
     *
     * @param inviter who invites, as they call themselves
     * @param title   of the series; empty where it is about the site
     */
    Mail invitation(Invitation invitation, String inviter, String title, SecretToken token) {
        var words = Messages.of(locale);
        String what = words.say(invitation.offer().key(), title);
        String link = head.link("desk/invitation/" + token.value());
        String days = Long.toString(Invitations.VALID.toDays());
        String text = words.say("people.letter.text", inviter, head.site(), head.host(), what, link, days);
        return Mail.of(
                        invitation.email(),
                        words.say("people.letter.subject", Mail.subjectOf(inviter), head.site()),
                        text,
                        invitation.createdAt())
                .uselessAfter(invitation.expiresAt());
    }

    /**
     * Told afterwards, so that an owner who did not offer it learns of it.
     *
     * @param former who gave it away, and {@code taker} who has it now
     * @param title  of the series; empty where it is the site
     */
    Mail handed(EmailAddress to, String former, String taker, Optional<String> title, Instant now) {
        var words = Messages.of(locale);
        String what = title.isPresent() ? "people.handed.series" : "people.handed.site";
        return Mail.of(
                to,
                words.say("people.handed.subject", head.site()),
                words.say(what, former, taker, head.site(), head.host(), title.orElse("")),
                now);
    }
}
