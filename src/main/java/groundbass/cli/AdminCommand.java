package groundbass.cli;

import groundbass.audience.student.Device;
import groundbass.audience.student.OpenSession;
import groundbass.audience.student.Person;
import groundbass.audience.student.SiteKey;
import groundbass.audience.student.Student;
import groundbass.backup.NotRestorable;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.site.Config;
import groundbass.site.StartFailure;
import groundbass.store.bucket.BucketName;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.io.BufferedReader;
import java.io.Console;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/**
 * {@code admin}: what whoever has the machine does beside the pages. The embedded database is open to one program at a
 * time, so there the server must be stopped; with PostgreSQL it may run.
 */
@Command(
        name = "admin",
        mixinStandardHelpOptions = true,
        subcommands = {
            BackupCommand.class,
            RestoreCommand.class,
            VerifyCommand.class,
            SumUpCommand.class,
            ExportCommand.class,
            ImportCommand.class
        },
        description = {
            "Helps where the pages cannot: a forgotten password, open sessions, what was done.",
            "With the embedded database stop the server first; with PostgreSQL it may run."
        })
public final class AdminCommand {
    private static final int REFUSED = ExitCode.SOFTWARE;

    @Spec
    private CommandSpec spec;

    @Mixin
    private SiteOptions where;

    @Command(
            name = "educators",
            mixinStandardHelpOptions = true,
            description = "Lists who has a desk, and who keeps the site.")
    int educators() {
        return reading(site -> {
            var all = site.accounts.educators().members();
            all.forEach(member -> say(member.educator().email() + "\t"
                    + member.educator().name() + "\tsince "
                    + member.educator().createdAt() + "\t"
                    + Messages.of(Locale.ENGLISH).say(member.standing().key())));
            return all.isEmpty() ? refuse("Nobody has a desk yet; serve prints a set-up code.") : ExitCode.OK;
        });
    }

    @Command(
            name = "reset-password",
            mixinStandardHelpOptions = true,
            description = {
                "Sets a new password and ends every session of its educator.",
                "It is asked for, or read from the first line of what is piped in; never given as a flag, since other"
                        + " users of a machine can read those."
            })
    int resetPassword(
            @Option(names = "--email", paramLabel = "ADDRESS", required = true, description = "Who has forgotten it.")
                    String email) {
        return with(site -> resetPassword(site, email));
    }

    private int resetPassword(AdminSite site, String email) {
        var educator = educator(site, email);
        var outcome = site.accounts.educators().resetPassword(educator.email(), password());
        if (outcome.result().isEmpty()) {
            return refuse(told(outcome.problems()));
        }
        int ended = site.accounts.sessions().closeAll(new Person.OfEducator(educator.id()));
        site.accounts
                .audit()
                .note(Audit.OPERATOR, AuditWord.PASSWORD_RESET, educator.id().value());
        say("The new password of " + educator.email() + " is set; sessions ended: " + ended + ".");
        return ExitCode.OK;
    }

    @Command(
            name = "end-second-factor",
            mixinStandardHelpOptions = true,
            description = "Lets an educator in with the password alone, whose phone and codes on paper are gone.")
    int endSecondFactor(
            @Option(names = "--email", paramLabel = "ADDRESS", required = true, description = "Whose it is.")
                    String email) {
        return with(site -> {
            var educator = educator(site, email);
            boolean wasOn = site.accounts.factors().turnOff(educator.id(), Audit.OPERATOR);
            say(wasOn ? "The second factor of " + educator.email() + " is off." : "There was none.");
            return ExitCode.OK;
        });
    }

    @Command(
            name = "set-owner",
            mixinStandardHelpOptions = true,
            description = {
                "Makes somebody with a desk the one who keeps the site: settings, imprint, e-mails, backups, people.",
                "Whoever kept it goes on with their own series. For the day on which that person is gone; else the desk"
                        + " hands the site over, under Settings, People."
            })
    int setOwner(
            @Option(
                            names = "--email",
                            paramLabel = "ADDRESS",
                            required = true,
                            description = "Who keeps it from now on.")
                    String email) {
        return with(site -> {
            var educator = educator(site, email);
            if (!site.accounts.handSiteOver(educator.id())) {
                throw new AdminSite.Refused(
                        "The desk of " + educator.email() + " was closed meanwhile; nothing was changed.");
            }
            say(educator.email() + " keeps the site now.");
            return ExitCode.OK;
        });
    }

    @Command(
            name = "sessions",
            mixinStandardHelpOptions = true,
            description = "Lists where educators are signed in, or where one person is.")
    int sessions(
            @Option(names = "--email", paramLabel = "ADDRESS", description = "An educator or student.")
                    Optional<String> email) {
        return reading(site -> {
            email.ifPresentOrElse(one -> list(site, one, person(site, one)), () -> site.accounts
                    .educators()
                    .all()
                    .forEach(each -> list(site, each.email(), new Person.OfEducator(each.id()))));
            return ExitCode.OK;
        });
    }

    private void list(AdminSite site, String email, Person person) {
        for (OpenSession session : site.accounts.sessions().of(person, Optional.empty())) {
            say(email + "\t" + name(session.device()) + "\tsince " + session.createdAt() + "\tseen "
                    + session.seenAt());
        }
    }

    @Command(
            name = "end-sessions",
            mixinStandardHelpOptions = true,
            description = "Signs an educator or a student out everywhere.")
    int endSessions(
            @Option(names = "--email", paramLabel = "ADDRESS", required = true, description = "Whose sessions end.")
                    String email) {
        return with(site -> {
            var person = person(site, email);
            int ended = site.accounts.sessions().closeAll(person);
            String whose = person.either(student -> "", educator -> educator.value());
            site.accounts.audit().note(Audit.OPERATOR, AuditWord.SESSIONS_ENDED, whose);
            say("Sessions ended: " + ended + ".");
            return ExitCode.OK;
        });
    }

    @Command(
            name = "renew-keys",
            mixinStandardHelpOptions = true,
            description = {
                "Makes the keys anew with which the site signs links and marks, as if somebody had seen the old ones.",
                "They are good until the server, or each of them, is started again. Links in letters that end news stop"
                        + " working then; the page of the account does it still."
            })
    int renewKeys() {
        return with(site -> {
            int keys = SiteKey.renew(site.database.jdbi(), site.accounts.audit());
            say("Keys deleted: " + keys + ". Start the server now, or start each again that runs; it makes new ones.");
            return ExitCode.OK;
        });
    }

    @Command(
            name = "audit",
            mixinStandardHelpOptions = true,
            description = "Prints who did what, the newest first, one entry a line: time, who, what, which,"
                    + " and by which request, as the log names it.")
    int audit(
            @Option(names = "--count", paramLabel = "N", defaultValue = "100", description = "At most so many (100).")
                    int count) {
        return reading(site -> {
            site.accounts
                    .audit()
                    .latest(Math.max(0, count))
                    .forEach(entry ->
                            say(entry.at() + "\t" + who(entry) + "\t" + entry.what() + "\t" + oneLine(entry.detail())
                                    + entry.request().map(id -> "\t" + id).orElse("")));
            return ExitCode.OK;
        });
    }

    private static String who(AuditEntry entry) {
        return entry.who()
                + entry.program()
                        .map(name -> " by the program " + oneLine(name))
                        .orElse("");
    }

    private static Educator educator(AdminSite site, String email) {
        return site.accounts
                .educators()
                .withEmail(email)
                .orElseThrow(() -> new AdminSite.Refused(
                        "No educator signs in with " + email + ". Who there is: admin educators"));
    }

    /** An educator, else a student. */
    private static Person person(AdminSite site, String email) {
        return site.accounts
                .educators()
                .withEmail(email)
                .<Person>map(educator -> new Person.OfEducator(educator.id()))
                .or(() -> EmailAddress.read(email)
                        .flatMap(site.accounts.students()::find)
                        .map(Student::id)
                        .map(Person.OfStudent::new))
                .orElseThrow(() -> new AdminSite.Refused("Nobody here has the address " + email + "."));
    }

    /** Asks twice where there is a terminal, else reads a line. */
    private static String password() {
        var console = System.console();
        return console == null ? line() : typed(console);
    }

    private static String typed(Console console) {
        String first = new String(console.readPassword("New password: "));
        String again = new String(console.readPassword("Once more: "));
        if (!first.equals(again)) {
            throw new AdminSite.Refused("The two are not the same; nothing was changed.");
        }
        return first;
    }

    private static String line() {
        try {
            var in = new BufferedReader(new InputStreamReader(System.in, Charset.defaultCharset()));
            return Optional.ofNullable(in.readLine()).orElse("");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    int with(Function<AdminSite, Integer> task) {
        return told(() -> {
            try (var site = AdminSite.open(config(), Clock.systemUTC())) {
                return task.apply(site);
            }
        });
    }

    /** For a command that changes nothing. */
    int reading(Function<AdminSite, Integer> task) {
        return told(() -> {
            try (var site = AdminSite.toRead(config(), Clock.systemUTC())) {
                return task.apply(site);
            }
        });
    }

    /** What an operator can mend is told in its sentence. */
    int told(Supplier<Integer> task) {
        try {
            return task.get();
        } catch (AdminSite.Refused | NotRestorable e) {
            return refuse(e.getMessage());
        } catch (RuntimeException e) {
            return refuse(advice(e).orElseThrow(() -> e));
        }
    }

    private Optional<String> advice(RuntimeException e) {
        return StartFailure.isInUse(e)
                ? Optional.of("The site in " + where.data()
                        + " is running, and its embedded database is open to one program at"
                        + " a time. Stop the server, do this, and start it again.")
                : StartFailure.advice(e, config()).or(() -> FileTrouble.advice(e));
    }

    Config config() {
        var config = Config.local(where.data(), 0).with(where.database());
        return where.files().map(text -> config.keptIn(bucket(text))).orElse(config);
    }

    private BucketName bucket(String text) {
        return BucketName.parse(text)
                .orElseThrow(() -> new AdminSite.Refused(
                        "--files is \"" + text + "\"; expected an address such as s3://bucket or s3://bucket/prefix."));
    }

    private static String told(List<FieldProblem> problems) {
        var messages = Messages.of(Locale.ENGLISH);
        return problems.stream()
                .map(problem -> messages.say(new Message(problem.key(), problem.args())))
                .reduce((one, other) -> one + " " + other)
                .orElse("");
    }

    private static String name(Device device) {
        return Messages.of(Locale.ENGLISH).say(device.key());
    }

    private static String oneLine(String text) {
        return text.replaceAll("\\s+", " ");
    }

    int refuse(String why) {
        PrintWriter err = spec.commandLine().getErr();
        err.println(why);
        err.flush();
        return REFUSED;
    }

    void say(String line) {
        PrintWriter out = spec.commandLine().getOut();
        out.println(line);
        out.flush();
    }
}
