package groundbass.web.desk.people;

import groundbass.Parts;
import groundbass.audience.colleague.Invitations;
import groundbass.audience.colleague.Transfers;
import groundbass.audience.student.LetterHead;
import groundbass.audience.student.Person;
import groundbass.audience.student.PreviewLinks;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesPart;
import groundbass.document.Level;
import groundbass.form.Outcome;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.site.Config;
import groundbass.web.Site;
import io.restassured.http.Cookie;
import io.restassured.specification.RequestSpecification;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.jdbi.v3.core.Jdbi;

/** A site with its keeper and a series of somebody else, who shares it with an editor and with a reader of its figures. */
public final class Company implements AutoCloseable {
    public static final String PASSWORD = "quartz lantern boat seven";

    final Site site;
    final Jdbi jdbi;
    final Educators educators;
    private final Educators.StoredPassword password;
    final SeriesCatalog catalog;
    final Colleagues colleagues;
    final Invitations invitations;
    final EpisodeService writing;
    final EducatorId keeper;
    final EducatorId owner;
    final EducatorId editor;
    final EducatorId figures;
    final Series series;

    public Company() {
        this(config -> config);
    }

    Company(UnaryOperator<Config> change) {
        site = Site.open(change);
        jdbi = site.groundbass().database().jdbi();
        var audit = new Audit(jdbi, site.clock());
        educators = new Educators(jdbi, audit, site.clock());
        password = TrialEducators.stored(PASSWORD);
        catalog = new SeriesCatalog(jdbi, audit, site.clock());
        colleagues = new Colleagues(jdbi, audit, site.clock());
        invitations = invitations(audit);
        writing = Parts.over(jdbi, site.clock()).desk();
        keeper = site.educator();
        owner = educator("Olga Owner", "olga@trial.example", true);
        series = done(catalog.create(owner, new SeriesForm("Low Tide", "", "Grooves.", "Europe/Vienna")));
        editor = educator("Edgar Editor", "edgar@trial.example", false);
        figures = educator("Fay Figures", "fay@trial.example", false);
        share(editor, SeriesPart.EDITOR);
        share(figures, SeriesPart.READER_OF_FIGURES);
    }

    private Invitations invitations(Audit audit) {
        var clock = site.clock();
        var outbox = new Outbox(jdbi, clock);
        Supplier<LetterHead> head = () -> new LetterHead("", "", URI.create("http://localhost"));
        var previews = new PreviewLinks(jdbi, audit, clock);
        var transfers = new Transfers(
                educators, catalog, colleagues, previews, outbox, audit, head, () -> Locale.ENGLISH, clock);
        return new Invitations(jdbi, educators, catalog, transfers, outbox, audit, head, clock);
    }

    /** Mail leaves for a server that is not there (RFC 6761 section 6.4), so that every e-mail waits in the outbox. */
    static Config withMail(Config config) {
        return config.with(new Config.MailServer(
                "mail.invalid", 2525, Optional.empty(), Optional.empty(), new EmailAddress("site@trial.example")));
    }

    EducatorId educator(String name, String email, boolean mayBegin) {
        return jdbi.inTransaction(handle -> educators.openDesk(handle, name, email, password, mayBegin))
                .orElseThrow()
                .id();
    }

    void share(EducatorId who, SeriesPart part) {
        jdbi.useTransaction(handle -> colleagues.enter(handle, who, series.id(), part));
    }

    void end(EducatorId who) {
        jdbi.useTransaction(handle -> colleagues.end(handle, owner, who, series.id()));
    }

    Episode episode(String title) {
        return done(writing.create(owner, series.id(), title, Level.BEGINNER));
    }

    Cookie cookie(EducatorId who) {
        return site.signedIn(new Person.OfEducator(who));
    }

    RequestSpecification browser(EducatorId who) {
        return site.browser().cookie(cookie(who));
    }

    RequestSpecification form(EducatorId who) {
        return site.form().cookie(cookie(who));
    }

    static <T> T done(Outcome<T> outcome) {
        return outcome.result()
                .orElseThrow(() -> new AssertionError(outcome.problems().toString()));
    }

    @Override
    public void close() {
        site.close();
    }
}
