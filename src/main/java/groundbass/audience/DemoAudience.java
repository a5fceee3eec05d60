package groundbass.audience;

import groundbass.post.EmailAddress;
import groundbass.store.Instants;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Invented students and downloads, so that the demo's statistics show something. Marked as such by their addresses, which
 * end in {@value #DOMAIN} (RFC 2606 section 2: never a real domain). The same story on every machine. Made once: a second
 * call finds them and does nothing.
 */
public final class DemoAudience {
    /** Whoever has an address here was invented. */
    public static final String DOMAIN = "demo.invalid";

    private static final int STUDENTS = 24;
    private static final long SEED = 4; // any number; fixed, so that the demo looks alike everywhere
    private static final Duration INTEREST_LASTS = Duration.ofDays(21);

    private final Random random = new Random(SEED);
    private final Handle handle;
    private final Instant now;

    private DemoAudience(Handle handle, Instant now) {
        this.handle = handle;
        this.now = now;
    }

    /**
     * What can be taken.
     *
     * @param since when it came out
     * @param files the bundle first
     */
    public record Offer(Instant since, List<ReleasedFile> files) {
        public Offer {
            files = List.copyOf(files);
        }
    }

    /** Invents downloads of the offers from when each came out until now. */
    public static void invent(Jdbi jdbi, List<Offer> offers, Instant now) {
        jdbi.useTransaction(handle -> {
            if (!isThere(handle)) new DemoAudience(handle, now).tell(offers);
        });
    }

    private static boolean isThere(Handle handle) {
        return handle.createQuery("select count(*) from student where email like :demo")
                        .bind("demo", "%@" + DOMAIN)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    private void tell(List<Offer> offers) {
        List<StudentId> students =
                IntStream.rangeClosed(1, STUDENTS).mapToObj(this::student).toList();
        for (Offer offer : offers) {
            students.stream().filter(student -> chance(0.6)).forEach(student -> visit(offer, Optional.of(student)));
            IntStream.range(0, random.nextInt(8)).forEach(visitor -> visit(offer, Optional.empty()));
        }
    }

    private StudentId student(int number) {
        StudentId id = StudentId.next();
        var email = new EmailAddress("student-%02d@%s".formatted(number, DOMAIN));
        handle.execute(
                "insert into student (id, email, locale, created_at) values (?, ?, ?, ?)",
                id.value(),
                email.value(),
                Locale.ENGLISH.toLanguageTag(),
                Instants.toColumn(now));
        return id;
    }

    /** Takes the bundle, and now and then a single file as well; most come in the first days. */
    private void visit(Offer offer, Optional<StudentId> student) {
        double early = random.nextDouble();
        Instant at = offer.since().plusSeconds((long) (early * early * early * INTEREST_LASTS.toSeconds()));
        List<ReleasedFile> files = offer.files();
        if (files.isEmpty() || at.isAfter(now)) return;
        take(files.get(0), student, at);
        if (chance(0.3)) take(files.get(random.nextInt(files.size())), student, at.plusSeconds(90));
    }

    private void take(ReleasedFile file, Optional<StudentId> student, Instant at) {
        boolean complete = chance(0.92);
        long sent = complete ? file.size() : (long) (random.nextDouble() * file.size());
        DownloadState state = complete ? DownloadState.COMPLETE : DownloadState.BROKEN_OFF;
        var download = new Download(DownloadId.next(at), file, student, at, at, state, sent, false, false);
        DownloadRows.insert(handle, download, Optional.empty());
    }

    private boolean chance(double of) {
        return random.nextDouble() < of;
    }
}
