package groundbass.web.desk.site;

import groundbass.audience.news.NewsReaders;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.publishing.Announcement;
import groundbass.publishing.Announcer;
import groundbass.publishing.NewsText;
import groundbass.publishing.NewsTexts;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** What is said in letters about new lessons of a series, how they look, and how many people get them. */
public final class DeskNewsPages implements PageGroup {
    private static final String PATH = "/desk/series/{id}/news";
    private static final String TEMPLATE = "desk/news";

    private final DeskContext desk;
    private final NewsTexts texts;
    private final NewsReaders readers;
    private final Announcer announcer;
    private final Episodes episodes;
    private final Educators educators;
    private final Outbox outbox;

    public DeskNewsPages(
            DeskContext desk,
            NewsTexts texts,
            NewsReaders readers,
            Announcer announcer,
            Episodes episodes,
            Educators educators,
            Outbox outbox) {
        this.desk = desk;
        this.texts = texts;
        this.readers = readers;
        this.announcer = announcer;
        this.episodes = episodes;
        this.educators = educators;
        this.outbox = outbox;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::open);
        routes.post(PATH, Role.EDUCATOR, this::save);
        routes.post(PATH + "/look", Role.EDUCATOR, this::look);
        routes.get(PATH + "/look", Role.EDUCATOR, this::lead);
        routes.post(PATH + "/test", Role.EDUCATOR, this::test);
    }

    private void open(Context ctx) {
        var series = desk.series(ctx);
        desk.pages().show(ctx, TEMPLATE, view(ctx, series, texts.of(series.id()), FieldProblems.NONE));
    }

    private void save(Context ctx) {
        var series = desk.series(ctx);
        var typed = read(ctx);
        var problems = new FieldProblems(
                texts.save(desk.educator(ctx), series.id(), typed).problems());
        if (problems.isEmpty()) {
            Flash.say(ctx, "desk.saved");
            lead(ctx);
        } else {
            desk.pages().showAgain(ctx, TEMPLATE, view(ctx, series, typed, problems));
        }
    }

    /** Shows what is typed, and saves nothing. */
    private void look(Context ctx) {
        desk.pages().show(ctx, TEMPLATE, view(ctx, desk.series(ctx), read(ctx), FieldProblems.NONE));
    }

    /** The letter as it is saved, to whoever is signed in. */
    private void test(Context ctx) {
        var series = desk.series(ctx);
        var news = sample(series)
                .map(lesson -> announcer.of(series, lesson, locale(ctx)))
                .orElseThrow(NotFoundResponse::new);
        var to = educators
                .find(desk.educator(ctx))
                .map(Educator::email)
                .flatMap(EmailAddress::read)
                .orElseThrow(NotFoundResponse::new);
        var letter = outbox.put(announcer.trial(series, news, to));
        Flash.say(ctx, "desk.outbox.tested");
        boolean seesLetters = desk.standing(ctx).keepsSite();
        ctx.redirect(seesLetters ? "/desk/outbox/" + letter.value() : path(series), HttpStatus.SEE_OTHER);
    }

    private void lead(Context ctx) {
        ctx.redirect(path(desk.series(ctx)), HttpStatus.SEE_OTHER);
    }

    private View view(Context ctx, Series series, NewsText text, FieldProblems problems) {
        var sample = sample(series).map(lesson -> announcer.of(series, lesson, locale(ctx), text));
        return new View(path(series), series.title(), text, readers.count(series.id()), sample, problems);
    }

    /** What came out last, else what comes first. */
    private Optional<Episode> sample(Series series) {
        var published = episodes.publishedIn(series.id()).stream()
                .max(Comparator.comparing(lesson -> lesson.publishedAt().orElseThrow()));
        return published.or(() -> episodes.in(series.id(), 0, 1).stream().findFirst());
    }

    private Locale locale(Context ctx) {
        return desk.pages().reader(ctx).locale();
    }

    private static NewsText read(Context ctx) {
        return new NewsText(FormParameters.text(ctx, "subject"), FormParameters.text(ctx, "opening"));
    }

    private static String path(Series series) {
        return "/desk/series/" + series.id() + "/news";
    }

    /**
     * What the page shows.
     *
     * @param sample a letter as it would read now; empty where the series has no lesson
     */
    public record View(
            String path,
            String series,
            NewsText text,
            NewsReaders.Count count,
            Optional<Announcement> sample,
            FieldProblems problems) {}
}
