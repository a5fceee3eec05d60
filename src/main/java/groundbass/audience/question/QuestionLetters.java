package groundbass.audience.question;

import groundbass.audience.student.LetterHead;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/** The letters about a question: to the educator that it was asked, to the student what became of it. */
record QuestionLetters(LetterHead head) {
    Mail asked(EmailAddress to, Locale locale, Question question, Instant now) {
        var words = Messages.of(locale);
        String subject =
                switch (question.topic()) {
                    case MUSIC -> words.say("question.asked.subject", title(question), place(question.place(), words));
                    case RIGHTS -> words.say("question.rights.subject", title(question));
                };
        String desk = head.link("desk/questions");
        return Mail.of(to, Mail.subjectOf(subject), words.say("question.asked.text", question.words(), desk), now);
    }

    Mail settled(Question question, QuestionEnd outcome, String answer, Instant now) {
        var words = Messages.of(question.locale());
        String subject = words.say("question.answer.subject", title(question));
        String said = answer.isBlank() ? "" : answer + "\n\n";
        String mended = outcome == QuestionEnd.CORRECTED ? words.say("question.answer.corrected") + "\n\n" : "";
        String text = words.say(
                "question.answer.text",
                head.teacher(),
                place(question.place(), words),
                question.words(),
                said + mended,
                head.link("e/" + question.episode()));
        return Mail.of(question.email(), Mail.subjectOf(subject), text, now);
    }

    private static String title(Question question) {
        return Mail.subjectOf(question.lesson());
    }

    private static String place(Optional<AskedPlace> place, Messages words) {
        return place.map(spot -> spot.count()
                        .map(count -> words.say("question.at.count", spot.bar(), count))
                        .orElseGet(() -> words.say("question.at.bar", spot.bar())))
                .orElseGet(() -> words.say("question.at.all"));
    }
}
