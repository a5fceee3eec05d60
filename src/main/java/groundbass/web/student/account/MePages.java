package groundbass.web.student.account;

import groundbass.audience.Leaving;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.audience.student.Student;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.text.Languages;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.SessionRow;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.UnauthorizedResponse;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a student finds about themselves: what they took, their language, a copy of it all, and the way out. */
public final class MePages implements PageGroup {
    private final Pages pages;
    private final AccessFilter accessFilter;
    private final Students students;
    private final Sessions sessions;
    private final Statistics statistics;
    private final DownloadView taken;
    private final OwnData data;
    private final OwnNews news;
    private final Leaving leaving;
    private final StudentSignIn signIn;

    public MePages(
            Pages pages,
            AccessFilter accessFilter,
            Students students,
            Sessions sessions,
            Statistics statistics,
            DownloadView taken,
            OwnData data,
            OwnNews news,
            Leaving leaving,
            StudentSignIn signIn) {
        this.pages = pages;
        this.accessFilter = accessFilter;
        this.students = students;
        this.sessions = sessions;
        this.statistics = statistics;
        this.taken = taken;
        this.data = data;
        this.news = news;
        this.leaving = leaving;
        this.signIn = signIn;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/me", Role.STUDENT, this::me);
        routes.post("/me/language", Role.STUDENT, this::speak);
        routes.get("/me/data.json", Role.STUDENT, this::copy);
        routes.get("/me/delete", Role.STUDENT, ctx -> pages.show(ctx, "student/delete", new Delete(email(ctx))));
        routes.post("/me/delete", Role.STUDENT, this::forget);
    }

    private void me(Context ctx) {
        var student = student(ctx);
        var rows = taken.rows(statistics.ofStudent(student.id()), pages.reader(ctx));
        var languages = Languages.SPOKEN.stream()
                .map(locale -> language(locale, student.locale()))
                .toList();
        var open = sessions.of(new Person.OfStudent(student.id()), signIn.token(ctx)).stream()
                .map(SessionRow::of)
                .toList();
        pages.show(ctx, "student/me", new Me(student.email().value(), rows, news.of(student), open, languages));
    }

    private void speak(Context ctx) {
        Optional.ofNullable(ctx.formParam("language"))
                .map(Locale::forLanguageTag)
                .filter(Languages.SPOKEN::contains)
                .ifPresent(locale -> {
                    students.speak(id(ctx), locale);
                    news.speak(student(ctx), locale);
                    pages.speak(ctx, locale);
                });
        Flash.say(ctx, "saved");
        ctx.redirect("/me", HttpStatus.SEE_OTHER);
    }

    private void copy(Context ctx) {
        ctx.header("Cache-Control", "no-store");
        ctx.header("Content-Disposition", "attachment; filename=\"my-data.json\"");
        ctx.json(data.of(student(ctx), students.lastUsed(id(ctx))));
    }

    private void forget(Context ctx) {
        leaving.forget(id(ctx));
        signIn.leave(ctx);
        Flash.say(ctx, "student.deleted");
        ctx.redirect("/", HttpStatus.SEE_OTHER);
    }

    private String email(Context ctx) {
        return student(ctx).email().value();
    }

    private Student student(Context ctx) {
        return students.find(id(ctx)).orElseThrow(UnauthorizedResponse::new);
    }

    private StudentId id(Context ctx) {
        return accessFilter.principal(ctx).student().orElseThrow(UnauthorizedResponse::new);
    }

    private static LanguageView language(Locale locale, Locale chosen) {
        return new LanguageView(locale.toLanguageTag(), locale.getDisplayLanguage(locale), locale.equals(chosen));
    }

    /** The page. */
    public record Me(
            String email,
            List<DownloadView.Row> taken,
            List<OwnNews.Row> news,
            List<SessionRow> sessions,
            List<LanguageView> languages) {}

    /** A language by its own name. */
    public record LanguageView(String tag, String name, boolean chosen) {}

    /** The question before an account goes. */
    public record Delete(String email) {}
}
