package groundbass.audience.colleague;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.util.Locale;

/** The letter that carries the link of an invitation. */
record InvitationLetters(LetterHead head, Locale locale) {
    /**
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
}
