package groundbass.audience;

import groundbass.audience.student.IdleStudents;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.Student;
import groundbass.catalog.settings.AccountRules;
import groundbass.post.Mail;
import groundbass.post.Outbox;
import groundbass.text.Messages;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.function.Supplier;
import org.jdbi.v3.core.Jdbi;

/**
 * Ends accounts that nobody has used for as long as the site says, a month after a letter to their students was seen to
 * have left. Where it could not leave, they are told anew a month later and nothing ends. Whoever signs in meanwhile keeps
 * theirs.
 */
public final class IdleAccounts {
    /** How long before its end a student is told. */
    public static final Duration NOTICE = Duration.ofDays(30);

    /** Letters of one pass, so that those which somebody waits for are not behind a thousand of these. */
    private static final int AT_ONCE = 20;

    /** As far as a moment months ago may fall back while time goes on, since not every month has a 31st. */
    private static final Duration END_OF_MONTH = Duration.ofDays(1);

    private final Jdbi jdbi;
    private final IdleStudents students;
    private final Leaving leaving;
    private final Outbox outbox;
    private final Supplier<LetterHead> head;
    private final Supplier<AccountRules> rules;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public IdleAccounts(
            Jdbi jdbi,
            IdleStudents students,
            Leaving leaving,
            Outbox outbox,
            Supplier<LetterHead> head,
            Supplier<AccountRules> rules,
            Clock clock) {
        this.jdbi = jdbi;
        this.students = students;
        this.leaving = leaving;
        this.outbox = outbox;
        this.head = head;
        this.rules = rules;
        this.clock = clock;
    }

    /** To be run every few minutes; idempotent. */
    void pass() {
        rules.get().idleMonths().ifPresentOrElse(this::pass, students::takeBack);
    }

    private void pass(int months) {
        Instant now = clock.instant();
        Instant unused = now.atZone(ZoneOffset.UTC).minusMonths(months).toInstant();
        Instant soon = unused.plus(NOTICE);
        Instant month = now.minus(NOTICE);
        students.noteSent(now);
        students.takeBackFromUsers(soon.plus(END_OF_MONTH));
        students.takeBackUnsent(month);
        students.untold(soon, AT_ONCE).forEach(student -> tell(student, soon, now));
        students.ended(unused, month, AT_ONCE)
                .forEach(student ->
                        leaving.forgetUnused(student, handle -> IdleStudents.hasEnded(handle, student, unused, month)));
    }

    private void tell(Student student, Instant unused, Instant now) {
        jdbi.useTransaction(handle -> {
            if (IdleStudents.tell(handle, student.id(), unused, now)) {
                IdleStudents.toldBy(handle, student.id(), outbox.put(letter(student, now)));
            }
        });
    }

    private Mail letter(Student student, Instant now) {
        var words = Messages.of(student.locale());
        var from = head.get();
        String end = now.plus(NOTICE)
                .atZone(ZoneOffset.UTC)
                .format(DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG).withLocale(student.locale()));
        String text =
                words.say("audience.idle.text", from.site(), from.teacher(), from.host(), end, from.link("sign-in"));
        return Mail.of(student.email(), words.say("audience.idle.subject", from.site(), end), text, now);
    }
}
