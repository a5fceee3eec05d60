package groundbass.web.student.account;

import groundbass.audience.student.Practice;
import groundbass.audience.student.PractisedLine;
import groundbass.audience.student.StudentId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
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
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

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
        practice.note(
                student,
                told.stream().filter(line -> isPublished(line.episode())).toList());
        each(ctx, "star", episode -> {
            if (isPublished(episode)) practice.favour(student, episode, true);
        });
        each(ctx, "unstar", episode -> practice.favour(student, episode, false));
        each(ctx, "forget", episode -> practice.forget(student, episode));
        ctx.header("Cache-Control", "no-store");
        ctx.json(all(student));
    }

    private void each(Context ctx, String field, Consumer<EpisodeId> task) {
        ctx.formParams(field).stream()
                .limit(MOST)
                .flatMap(id -> EpisodeId.parse(id).stream())
                .forEach(task);
    }

    /** Whether students ever had it: what they practised stays theirs where the lesson is taken back. */
    private boolean isPublished(EpisodeId id) {
        return episodes.find(id).filter(Episode::isPublished).isPresent();
    }

    private Map<String, Object> all(StudentId student) {
        return Map.of(
                "lines",
                practice.of(student).stream()
                        .flatMap(line -> line(line).stream())
                        .toList(),
                "stars",
                practice.favourites(student).stream()
                        .flatMap(id -> lesson(id).stream())
                        .toList());
    }

    private Optional<Map<String, Object>> line(PractisedLine line) {
        return lesson(line.episode()).map(data -> {
            data.put("line", line.line());
            data.put("day", line.practisedOn().toString());
            data.put("tempo", line.tempo());
            data.put("from", line.fromPlace());
            data.put("to", line.toPlace());
            return data;
        });
    }

    private Optional<Map<String, Object>> lesson(EpisodeId id) {
        return episodes.find(id).map(episode -> {
            Map<String, Object> data = new LinkedHashMap<>();
            data.put("lesson", id.value());
            data.put("title", episode.title());
            return data;
        });
    }

    /** A page that a script fills. */
    public record View(boolean keeping) {}
}
