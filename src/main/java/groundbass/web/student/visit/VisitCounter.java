package groundbass.web.student.visit;

import groundbass.audience.download.Requester;
import groundbass.audience.student.StudentId;
import groundbass.audience.visit.LessonVisits;
import groundbass.audience.visit.Sitting;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.settings.SiteSettings;
import groundbass.web.shell.AccessFilter;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Decides which requests are visits that count: none where the site counts none, none of whoever asks not to be counted, and of
 * openings of a page only those by a person, now.
 */
public final class VisitCounter {
    private final LessonVisits visits;
    private final AccessFilter accessFilter;
    private final Supplier<SiteSettings> settings;

    public VisitCounter(LessonVisits visits, AccessFilter accessFilter, Supplier<SiteSettings> settings) {
        this.visits = visits;
        this.accessFilter = accessFilter;
        this.settings = settings;
    }

    /** Whether the site counts visits at all. */
    public boolean isOn() {
        return settings.get().countsVisits();
    }

    /** The page of a lesson is answered. */
    public void viewed(Context ctx, Episode lesson) {
        if (counts(ctx) && isOpening(ctx)) {
            visits.viewed(lesson, requester(ctx));
        }
    }

    /** A student has just signed in, and goes on to a lesson. */
    public void signedIn(Context ctx, Episode lesson, StudentId student) {
        if (counts(ctx)) {
            visits.signedIn(lesson, new Requester.Known(student));
        }
    }

    /** A page tells what was done on it. */
    public void sat(Context ctx, Episode lesson, Sitting sitting) {
        if (counts(ctx)) {
            visits.sat(lesson, sitting, requester(ctx));
        }
    }

    private Requester requester(Context ctx) {
        return Requesters.of(ctx, accessFilter.principal(ctx));
    }

    /** Global Privacy Control (W3C) and Tracking Preference Expression (W3C): 1 says no. */
    private boolean counts(Context ctx) {
        return isOn() && !"1".equals(ctx.header("Sec-GPC")) && !"1".equals(ctx.header("DNT"));
    }

    /**
     * Whether somebody opens a page in a window: not where a browser fetches ahead ({@code Sec-Purpose}, WHATWG Fetch), nor where
     * a script fetches it, to keep it (W3C Fetch Metadata). A program that says nothing of this is taken at its word.
     */
    private static boolean isOpening(Context ctx) {
        boolean ahead = header(ctx, "Sec-Purpose").contains("prefetch")
                || header(ctx, "Purpose").contains("prefetch");
        String into = header(ctx, "Sec-Fetch-Dest");
        return ctx.method() == HandlerType.GET && !ahead && (into.isEmpty() || into.equals("document"));
    }

    private static String header(Context ctx, String name) {
        return Optional.ofNullable(ctx.header(name)).orElse("");
    }
}
