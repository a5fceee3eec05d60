package groundbass.audience.question;

import groundbass.audience.student.LetterHead;
import groundbass.post.EmailAddress;
import groundbass.post.Mail;
import groundbass.text.Messages;
import java.time.Instant;
import java.util.Locale;

/** The letters about a question: to the educator that it was asked, to the student what became of it. */
record QuestionLetters(LetterHead head) {
    /** Without the student's words: these are kept once, and go with the account. */
    Mail asked(EmailAddress to, Locale locale, Question question, Instant now) {
        var words = Messages.of(locale);
        String place = words.say(question.at());
        String desk = head.link("desk/questions");
        return switch (question.topic()) {
            case MUSIC -> {
                String subject = words.say("question.asked.subject", title(question), place);
                yield Mail.of(
                        to,
                        Mail.subjectOf(subject),
                        words.say("question.asked.text", title(question), place, desk),
                        now);
            }
            case RIGHTS -> {
                String subject = words.say("question.rights.subject", title(question));
                yield Mail.of(
                        to,
                        Mail.subjectOf(subject),
                        words.say("question.rights.text", title(question), place, desk),
                        now);
            }
        };
    }

    Mail settled(Question question, QuestionEnd outcome, String answer, Instant now) {
        var words = Messages.of(question.locale());
        String about =
                switch (question.topic()) {
                    case MUSIC -> "question.answer";
                    case RIGHTS -> "question.answer.rights";
                };
        String subject = words.say(about + ".subject", title(question));
        String said = answer.isBlank() ? "" : answer + "\n\n";
        String mended = outcome == QuestionEnd.CORRECTED ? words.say("question.answer.corrected") + "\n\n" : "";
        String text = words.say(
                about + ".text",
                head.teacher(),
                words.say(question.at()),
                question.words(),
                said + mended,
                head.link("e/" + question.episode()));
        return Mail.of(question.email(), Mail.subjectOf(subject), text, now);
    }

    private static String title(Question question) {
        return Mail.subjectOf(question.lesson());
    }
}
