package groundbass.web.student.account;

import groundbass.audience.student.Practice;
import groundbass.audience.student.PractisedLine;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeTitle;
import groundbass.catalog.episode.Episodes;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.UnauthorizedResponse;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What somebody has practised. It is kept in the browser; where they are signed in, the page's script joins it to their
 * account, and gets what other browsers have told.
 */
public final class PractisedPages implements PageGroup {
    /** Of one request: more than a browser keeps. */
    private static final int MOST = 500;

    private final Pages pages;
    private final AccessFilter accessFilter;
    private final Practice practice;
    private final Episodes episodes;
    private final boolean keeping;
    private final Clock clock;

    /** @param keeping whether lessons may be kept on a device, so that there is a list of them */
    public PractisedPages(
            Pages pages,
            AccessFilter accessFilter,
            Practice practice,
            Episodes episodes,
            boolean keeping,
            Clock clock) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.practice = practice;
        this.episodes = episodes;
        this.keeping = keeping;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(
                "/practised",
                Role.ANYONE,
                ctx -> pages.showShared(ctx, "student/practised", "", reader -> new View(keeping)));
        routes.post("/me/practised", Role.STUDENT, this::join);
    }

    /** Takes what the browser tells, and answers with all that is known. */
    private void join(Context ctx) {
        var student = accessFilter.principal(ctx).student().orElseThrow(UnauthorizedResponse::new);
        var marks = ctx.formParams("mark").stream().limit(MOST).toList();
        var told = PractisedForm.read(marks, LocalDate.ofInstant(clock.instant(), ZoneOffset.UTC));
        var starred = ids(ctx, "star");
        var published = published(Stream.concat(told.stream().map(PractisedLine::episode), starred.stream()));
        practice.note(
                student,
                told.stream().filter(line -> published.contains(line.episode())).toList());
        starred.stream().filter(published::contains).forEach(episode -> practice.favour(student, episode, true));
        ids(ctx, "unstar").forEach(episode -> practice.favour(student, episode, false));
        ids(ctx, "forget").forEach(episode -> practice.forget(student, episode));
        ctx.header("Cache-Control", "no-store");
        ctx.json(all(student));
    }

    private static List<EpisodeId> ids(Context ctx, String field) {
        return ctx.formParams(field).stream()
                .limit(MOST)
                .flatMap(id -> EpisodeId.parse(id).stream())
                .toList();
    }

    /** Those that students ever had: what they practised stays theirs where the lesson is taken back. */
    private Set<EpisodeId> published(Stream<EpisodeId> ids) {
        return episodes.titles(ids.toList()).values().stream()
                .filter(EpisodeTitle::published)
                .map(EpisodeTitle::episode)
                .collect(Collectors.toSet());
    }

    private Map<String, Object> all(StudentId student) {
        var lines = practice.of(student);
        var stars = practice.favourites(student);
        var titles = episodes.titles(Stream.concat(lines.stream().map(PractisedLine::episode), stars.stream())
                .toList());
        return Map.of(
                "lines",
                lines.stream()
                        .filter(line -> titles.containsKey(line.episode()))
                        .map(line -> line(line, titles.get(line.episode())))
                        .toList(),
                "stars",
                stars.stream()
                        .filter(titles::containsKey)
                        .map(id -> lesson(titles.get(id)))
                        .toList());
    }

    private static Map<String, Object> line(PractisedLine line, EpisodeTitle title) {
        var data = lesson(title);
        data.put("line", line.line());
        data.put("day", line.practisedOn().toString());
        data.put("tempo", line.tempo());
        data.put("from", line.fromPlace());
        data.put("to", line.toPlace());
        return data;
    }

    private static Map<String, Object> lesson(EpisodeTitle title) {
        Map<String, Object> data = new LinkedHashMap<>();
        data.put("lesson", title.episode().value());
        data.put("title", title.title());
        return data;
    }

    /** A page that a script fills. */
    public record View(boolean keeping) {}
}
