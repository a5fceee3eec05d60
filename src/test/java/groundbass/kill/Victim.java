package groundbass.kill;

import groundbass.Parts;
import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.student.Agreements;
import groundbass.audience.student.Consents;
import groundbass.audience.student.Device;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.audience.student.SignIns;
import groundbass.audience.student.SignedIn;
import groundbass.audience.student.Students;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.store.Database;
import groundbass.store.RandomId;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;

/**
 * A program of its own, to be killed: all that a site acknowledges, from many threads at once, without end. A line for
 * each ({@link Acknowledged}) is printed as soon as the call has returned after which a page would be answered.
 */
final class Victim {
    private static final int READERS = 4;
    private static final int STUDENTS = 2;
    private static final ReleasedFile FILE =
            new ReleasedFile("release000000001", new EpisodeId("episode000000001"), "sheet.pdf", 1000);

    private final Database database;
    private final Clock clock = Clock.systemUTC();
    private final Downloads downloads;
    private final Outbox outbox;
    private final SignIns signIns;

    private Victim(Database database) {
        var jdbi = database.jdbi();
        this.database = database;
        this.downloads = new Downloads(jdbi, DownloadToken.of(jdbi), new VisitorKey(clock), clock);
        this.outbox = new Outbox(jdbi, clock);
        var students = new Students(jdbi, outbox, new Audit(jdbi, clock), clock);
        this.signIns = new SignIns(
                jdbi,
                outbox,
                students,
                new Consents(jdbi, clock),
                Parts.sessions(jdbi, clock),
                () -> new LetterHead("Lessons", "A. Teacher", URI.create("https://lessons.example")),
                clock);
    }

    /** @param args the parts of a {@link Site} */
    public static void main(String[] args) {
        var site = new Site(Path.of(args[0]), args[1], args[2]);
        var database = site.open();
        if (site.isEmbedded()) {
            // gaps in the file are filled at once instead of after 45 seconds, as in a server that has run for a while
            database.jdbi().useHandle(handle -> handle.execute("set retention_time 0"));
        }
        new Victim(database).work();
        new VictimsDesk(database, site.blobs(database)).work();
    }

    static void forEver(Runnable work) {
        new Thread(() -> {
                    while (true) {
                        work.run();
                    }
                })
                .start();
    }

    static void acknowledge(Kind kind, String key) {
        System.out.println(new Acknowledged(kind, key).line());
    }

    private void work() {
        for (int i = 0; i < READERS; i++) {
            forEver(this::take);
        }
        for (int i = 0; i < STUDENTS; i++) {
            forEver(this::signIn);
        }
    }

    private void take() {
        var requester = new Requester.Anonymous("192.0.2.7", RandomId.next()); // RFC 5737
        var id = downloads
                .begin(new FileRequest(FILE, requester, true, Optional.empty()))
                .id();
        acknowledge(Kind.BEGUN, id.value());
        downloads.sent(id, ByteSpan.of(0, FILE.size()));
        downloads.settle();
        acknowledge(Kind.COMPLETE, id.value());
    }

    private void signIn() {
        var reader = new EmailAddress(RandomId.next() + "@example.org");
        signIns.request(reader, Locale.ENGLISH);
        acknowledge(Kind.LETTER, reader.value());
        if (signIns.use(link(reader), Agreements.to("wording"), Device.COMPUTER) instanceof SignedIn.As) {
            acknowledge(Kind.ACCOUNT, reader.value());
        }
    }

    /** The token as the reader would find it in the letter. */
    private SecretToken link(EmailAddress reader) {
        String text = database.jdbi()
                .withHandle(handle -> handle.createQuery("select body from outbox where recipient = :reader")
                        .bind("reader", reader.value())
                        .mapTo(String.class)
                        .one());
        return new SecretToken(text.split("/sign-in/")[1].split("\\s")[0]);
    }
}
