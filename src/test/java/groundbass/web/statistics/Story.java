package groundbass.web.statistics;

import groundbass.Parts;
import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.student.StudentId;
import groundbass.audience.visit.LessonVisits;
import groundbass.audience.visit.PlayedLine;
import groundbass.audience.visit.Sitting;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Level;
import groundbass.form.Outcome;
import groundbass.store.Instants;
import groundbass.web.Site;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jdbi.v3.core.Jdbi;

/**
 * A site where this happened: two lessons of one educator and one of another; two students, a visitor who asks twice and
 * a robot take something. Vienna is an hour before UTC in winter (IANA tz, Europe/Vienna), so that the first download
 * falls on Sunday, 23:30, and the second on Monday, 00:30.
 */
final class Story implements AutoCloseable {
    static final String TITLE = "=Rope & <Tide>";
    static final Instant NOW = Instant.parse("2026-02-11T09:00:00Z");

    private static final Requester VISITOR =
            new Requester.Anonymous("192.0.2.7", "A browser/1.0"); // address of RFC 5737
    private static final Requester ROBOT = new Requester.Anonymous("192.0.2.8", "Examplebot/2.1");

    final Site site = Site.open();
    final Episode rope;
    final Episode ferry;
    final Episode strangers;
    final StudentId anna;
    final StudentId bert;
    final StudentId carl;

    private final Jdbi jdbi = site.groundbass().database().jdbi();
    private final Audit audit = new Audit(jdbi, site.clock());
    private final Downloads downloads =
            new Downloads(jdbi, DownloadToken.of(jdbi), new VisitorKey(site.clock()), site.clock());

    private final LessonVisits visits = new LessonVisits(jdbi, new VisitorKey(site.clock()), site.clock());

    Story() {
        rope = lesson(site.educator(), "Low Tide", TITLE);
        ferry = lesson(site.educator(), "Low Tide", "Night Ferry");
        site.clock().advance(Duration.ofSeconds(1)); // the first educator is the one who came first
        var stranger =
                TrialEducators.create(jdbi, site.clock(), "Other Studio", "other@trial.example", "another password");
        strangers = lesson(stranger.id(), "High Tide", "Theirs");
        anna = student("a.reader@example.org");
        bert = student("b.reader@demo.invalid");
        carl = student("c.reader@example.org");
        tell();
        site.clock().set(NOW);
    }

    private void tell() {
        take("2026-02-01T22:30:00Z", rope, "sheet.pdf", new Requester.Known(anna), 1000);
        take("2026-02-01T23:30:00Z", rope, "line.mid", new Requester.Known(anna), 1000);
        take("2026-02-03T18:00:00Z", rope, "sheet.pdf", new Requester.Known(bert), 400);
        take("2026-02-04T09:00:00Z", rope, "sheet.pdf", VISITOR, 1000);
        take("2026-02-04T09:01:00Z", rope, "sheet.pdf", VISITOR, 1000);
        take("2026-02-04T09:02:00Z", rope, "sheet.pdf", ROBOT, 1000);
        take("2026-02-10T08:00:00Z", ferry, "bundle.zip", new Requester.Known(bert), 1000);
        take("2026-02-10T09:00:00Z", strangers, "sheet.pdf", new Requester.Known(anna), 1000);
        take("2026-02-10T10:00:00Z", strangers, "sheet.pdf", new Requester.Known(carl), 1000);
        visit();
    }

    /** Rope is opened by a visitor on its first day and by Anna on its second, and both play; Ferry by Bert in its second week. */
    private void visit() {
        site.clock().set("2026-02-02T10:00:00Z");
        visits.viewed(rope, VISITOR);
        visits.sat(rope, played(1), VISITOR);
        site.clock().set("2026-02-03T10:00:00Z");
        visits.viewed(rope, new Requester.Known(anna));
        visits.sat(rope, played(4, 3, 4), new Requester.Known(anna));
        visits.sat(rope, new Sitting(1, List.of(), List.of("https://courses.example/slap")), new Requester.Known(anna));
        site.clock().set("2026-02-10T08:00:00Z");
        visits.signedIn(ferry, new Requester.Known(bert));
        visits.viewed(ferry, new Requester.Known(bert));
        visits.write();
        techniques(rope, " slap ");
        techniques(ferry, " slap i m ");
    }

    private static Sitting played(int quarters, Integer... looped) {
        return new Sitting(1, List.of(new PlayedLine("line", quarters, Set.of(looped))), List.of());
    }

    private void techniques(Episode lesson, String words) {
        jdbi.useHandle(handle -> handle.execute(
                "insert into lesson_traits (episode_id, release_id, techniques, key_name, meter, tempo, strings, words,"
                        + " title_words) values (?, 'release000000001', ?, 'C major', '4/4', 100, 4, ' ', ' ')",
                lesson.id().value(),
                words));
    }

    private void take(String when, Episode episode, String name, Requester requester, long bytes) {
        site.clock().set(when);
        var file = new ReleasedFile("release000000001", episode.id(), name, 1000);
        var begun = downloads.begin(new FileRequest(file, requester, true, Optional.empty()));
        if (bytes == file.size()) {
            downloads.sent(begun.id(), ByteSpan.of(0, bytes));
        } else {
            downloads.brokenOff(begun.id(), ByteSpan.of(0, bytes));
        }
        downloads.settle();
    }

    private Episode lesson(EducatorId owner, String series, String title) {
        var catalog = new SeriesCatalog(jdbi, audit, site.clock());
        var home = catalog.open(owner, Deed.KEEP).stream()
                .findFirst()
                .orElseGet(() -> done(catalog.create(owner, new SeriesForm(series, "", "", "Europe/Vienna"))));
        var episode = done(Parts.over(jdbi, site.clock()).desk().create(owner, home.id(), title, Level.BEGINNER));
        jdbi.useTransaction(handle -> new Episodes(jdbi).markPublished(handle, episode.id(), Site.START));
        return new Episodes(jdbi).find(episode.id()).orElseThrow();
    }

    /** So many lessons more of the same series. */
    void further(int lessons) {
        for (int i = 1; i <= lessons; i++) {
            lesson(site.educator(), "Low Tide", "Further " + i);
        }
    }

    private StudentId student(String email) {
        var id = StudentId.next();
        jdbi.useHandle(handle -> handle.execute(
                "insert into student (id, email, locale, created_at) values (?, ?, 'en', ?)",
                id.value(),
                email,
                Instants.toColumn(Site.START)));
        return id;
    }

    private static <T> T done(Outcome<T> outcome) {
        return outcome.result()
                .orElseThrow(() -> new AssertionError(outcome.problems().toString()));
    }

    @Override
    public void close() {
        site.close();
    }
}
