package groundbass.web.desk;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Clearance;
import groundbass.document.DocumentEdit;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.Outcome;
import groundbass.store.BlobFolder;
import groundbass.walkthrough.words.Naming;
import groundbass.web.Html;
import groundbass.web.Site;
import groundbass.web.SoundsMade;
import io.restassured.http.Cookie;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.List;
import java.util.function.UnaryOperator;

/** A site with an educator at the desk, another one, and a series of either. */
public final class Studio implements AutoCloseable {
    public static final String LINE = "key A dorian\n\nbar 1 over Am7\n1 2 3 4  A5*2, E5, A5\n";

    /** What these lines sound like is made once; two or three hundred short files are laid in a moment. */
    private static final SoundsMade SOUNDS = new SoundsMade(8_000_000);

    public final Site site = Site.open();
    public final Cookie cookie = site.atTheDesk();
    public final SeriesCatalog catalog;
    final Episodes episodes;
    public final EpisodeService writing;
    public final Series series;
    public final Episode strangersEpisode;

    public Studio() {
        this("https://studio.example");
    }

    /** @param publicAddress as the educator chose it; empty for none */
    public Studio(String publicAddress) {
        var jdbi = site.groundbass().database().jdbi();
        SOUNDS.lay(jdbi, blobs(), site.clock().instant());
        var audit = new Audit(jdbi, site.clock());
        // sheets with an address of this machine alone would have to be accepted one by one
        jdbi.useHandle(handle ->
                handle.execute("insert into setting (name, chosen) values ('public.address', ?)", publicAddress));
        catalog = new SeriesCatalog(jdbi, audit, site.clock());
        episodes = new Episodes(jdbi);
        writing = Parts.over(jdbi, site.clock()).desk();
        series = done(catalog.create(site.educator(), new SeriesForm("Low Tide", "", "Grooves.", "Europe/Vienna")));
        site.clock().advance(Duration.ofMinutes(1)); // so that it is clear who was there first
        var stranger =
                TrialEducators.create(jdbi, site.clock(), "Other Studio", "other@trial.example", "another password");
        var theirs = done(catalog.create(stranger.id(), new SeriesForm("High Tide", "", "", "Europe/Vienna")));
        strangersEpisode = done(writing.create(stranger.id(), theirs.id(), "Theirs", Level.BEGINNER));
    }

    public Episode episode(String title) {
        return done(writing.create(site.educator(), series.id(), title, Level.BEGINNER));
    }

    /**
     * Writes that line, and settles whose music it is, so that nothing keeps the lesson from going out. Its tracks are few
     * and short, since what is done at a desk is seldom about sound.
     */
    public void write(Episode episode, String line) {
        change(episode, edit -> edit.mainLine(new LineSource("", line))
                .settings(new DocumentSettings("en", "100", "1", Naming.USUAL.word()))
                .rights(new Rights("", "", "Own work.", Clearance.OWN)));
    }

    /** Changes what is saved, as another window would. */
    public void change(Episode episode, UnaryOperator<DocumentEdit> change) {
        done(writing.saveDraft(
                site.educator(), episode.id(), (stored, changed) -> true, before -> change.apply(before.edit())
                        .done()));
    }

    /** What is saved. */
    public EpisodeDocument document(Episode episode) {
        return writing.draft(site.educator(), episode.id()).orElseThrow().document();
    }

    /** A lesson that is there. */
    public Episode episode(EpisodeId id) {
        return episodes.find(id).orElseThrow();
    }

    public Episode now(Episode episode) {
        return episodes.find(episode.id()).orElseThrow();
    }

    /** What does not conform to HTML; the checker's SVG is older than CSS Fonts 3 (section 6.7), which names this value. */
    public static List<String> mistakes(String page) {
        return Html.mistakes(page.replace(" font-variant=\"lining-nums\"", ""));
    }

    public static <T> T done(Outcome<T> outcome) {
        return outcome.result()
                .orElseThrow(() -> new AssertionError(outcome.problems().toString()));
    }

    /** A page as the educator's browser asks for it. */
    public RequestSpecification browser() {
        return site.browser().cookie(cookie);
    }

    /** A form as the educator's browser sends it. */
    public RequestSpecification form() {
        return site.form().cookie(cookie);
    }

    @Override
    public void close() {
        SOUNDS.keep(site.groundbass().database().jdbi(), blobs());
        site.close();
    }

    private BlobFolder blobs() {
        try {
            return new BlobFolder(site.data().resolve("files"), site.clock());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
