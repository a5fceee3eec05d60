package groundbass.publishing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.LetterHead;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.upload.UploadRepository;
import groundbass.document.Clearance;
import groundbass.document.DocumentEdit;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.Outcome;
import groundbass.post.Outbox;
import groundbass.publishing.address.Addresses;
import groundbass.release.Built;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.release.Releases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.net.URI;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.function.UnaryOperator;

/** One educator with one series, and a calendar whose hours the test moves. */
final class Studio {
    static final Instant NOW = Instant.parse("2026-03-02T09:00:00Z");
    static final ZoneId BERLIN = ZoneId.of("Europe/Berlin");
    static final String LINE = "bar 1\n1-4 E5\n";

    final SettableClock clock = SettableClock.at(NOW);
    final List<ReleaseId> queue = new ArrayList<>();
    final Releases releases;
    final Revisions revisions;
    final Episodes episodes;
    final EpisodeService desk;
    final PublishingParts parts;
    final Publisher publisher;
    final PublicationJob publicationJob;
    final HourWatch watch;
    final Outbox outbox;
    final NewsReaders newsReaders;
    final NewsTexts newsTexts;
    final NewsRound newsRound;
    final NewsQueue news;
    final TakingBack takingBack;
    final Bin bin;
    final Audit audit;
    final EducatorId educator;
    final SeriesCatalog catalog;
    int saidToLast;
    /** A program that fails where it looks a lesson through. */
    boolean failsAtLessons;

    Studio(Database database) {
        var jdbi = database.jdbi();
        var site = Parts.over(jdbi, clock);
        releases = site.releases();
        revisions = site.revisions();
        episodes = site.episodes();
        desk = site.desk();
        catalog = site.catalog();
        educator = TrialEducators.create(jdbi, clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        site.settings().saveImprint(educator, new Imprint("Quay Studio", "desk@example.org", "", "", ""));
        parts = site.publishing(new Quay(), queue::add);
        outbox = new Outbox(jdbi, clock);
        publisher = new Publisher(parts);
        watch = new HourWatch(parts, new HourLetters(parts, site.educators(), outbox));
        newsReaders = new NewsReaders(jdbi, clock);
        newsTexts = new NewsTexts(jdbi, site.audit());
        var announcer = new Announcer(parts, newsTexts, newsReaders, Studio::head);
        newsRound = new NewsRound(parts, site.news(), announcer, outbox);
        news = site.news();
        takingBack = new TakingBack(parts);
        bin = new Bin(parts, new UploadRepository(jdbi));
        audit = site.audit();
        publicationJob = new PublicationJob(parts, watch, () -> saidToLast++);
    }

    /** Where the site is; whoever looks lessons through asks it for theirs. */
    private final class Quay implements Addresses {
        @Override
        public String site() {
            return "https://example.org";
        }

        @Override
        public Addresses now() {
            return this;
        }

        @Override
        public String episode(EpisodeId id) {
            if (failsAtLessons) {
                throw new IllegalStateException("the string broke");
            }
            return Addresses.super.episode(id);
        }
    }

    private static LetterHead head() {
        return new LetterHead("Quay Lessons", "A. Teacher", URI.create("https://example.org"));
    }

    EpisodeId episode(String title) {
        var series = catalog.open(educator, Deed.KEEP).stream()
                .findFirst()
                .orElseGet(() ->
                        done(catalog.create(educator, new SeriesForm("Low Tide", "", "Grooves.", BERLIN.getId()))));
        var id = done(desk.create(educator, series.id(), title, Level.BEGINNER)).id();
        write(id, LINE);
        return id;
    }

    void write(EpisodeId id, String line) {
        var draft = desk.draft(educator, id).orElseThrow();
        var document = draft.document()
                .edit()
                .mainLine(new LineSource("", line))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
        assertThat(DocumentCheck.problems(document)).isEmpty();
        done(desk.saveDraft(educator, id, draft.version(), document));
    }

    void rename(EpisodeId id, String title) {
        var draft = desk.draft(educator, id).orElseThrow();
        done(desk.saveDraft(
                educator,
                id,
                draft.version(),
                draft.document().edit().title(title).done()));
    }

    /** A look at it, as a page that was just opened has it. */
    LessonLook look(EpisodeId id) {
        return publisher.look().at(educator, find(id));
    }

    /** How it stands, as a page that was just opened says. */
    Seen seen(EpisodeId id) {
        return Seen.of(find(id).state());
    }

    Outcome<ReleaseId> bringOut(EpisodeId id) {
        return publisher.bringOut(educator, id, seen(id));
    }

    Outcome<ReleaseId> correct(EpisodeId id) {
        return publisher.correct(educator, id, new ReleaseNote("A slip is put right.", false), seen(id));
    }

    Outcome<ReleaseId> promise(EpisodeId id, LocalDateTime hour) {
        return publisher.schedule(educator, id, hour, BERLIN, seen(id));
    }

    Outcome<EpisodeId> withdraw(EpisodeId id) {
        return publisher.withdraw(educator, id, seen(id));
    }

    void buildAll() {
        releases.builds().unfinished().forEach(release -> Built.ready(releases, release.id(), clock.instant()));
    }

    ReleaseId current(EpisodeId id) {
        return releases.current(id).orElseThrow().id();
    }

    Episode find(EpisodeId id) {
        return episodes.find(id).orElseThrow();
    }

    /** What readers of it get, as text. */
    String shown(EpisodeId id) {
        var release = releases.current(id).orElseThrow();
        return revisions
                .find(release.spec().revision())
                .orElseThrow()
                .document()
                .mainLine()
                .text();
    }

    void change(EpisodeId id, UnaryOperator<DocumentEdit> change) {
        var draft = desk.draft(educator, id).orElseThrow();
        done(desk.saveDraft(
                educator,
                id,
                draft.version(),
                change.apply(draft.document().edit()).done()));
    }

    /** The subjects of all letters to the educator, the oldest first. */
    List<String> letters() {
        var newest = outbox.newest(100).stream()
                .map(letter -> letter.message().subject())
                .toList();
        var oldest = new ArrayList<>(newest);
        Collections.reverse(oldest);
        return oldest;
    }

    static <T> T done(Outcome<T> outcome) {
        assertThat(outcome.problems()).isEmpty();
        return outcome.result().orElseThrow();
    }
}
