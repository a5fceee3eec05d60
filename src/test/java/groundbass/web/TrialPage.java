package groundbass.web;

import groundbass.form.FieldProblem;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;

/** One page with every part of the look on it, to be looked at and checked. */
final class TrialPage {
    private static final String SVG = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 600 80\" role=\"img\""
            + " aria-label=\"Four strings\"><path d=\"M0 10H600M0 30H600M0 50H600M0 70H600\" stroke=\"currentColor\"/></svg>";

    private final Pages pages;

    TrialPage(Pages pages) {
        this.pages = pages;
    }

    void addTo(Routes routes) {
        routes.get("/trial", Role.ANYONE, this::show);
        routes.post(
                "/trial", Role.ANYONE, ctx -> pages.showAgain(ctx, "trial/components", view(ctx.formParam("title"))));
    }

    private void show(Context ctx) {
        pages.show(ctx, "trial/components", view("What <was> \"typed\""));
    }

    private static View view(String typed) {
        var first = new EpisodeCard(
                "/a",
                4,
                "Lantern Street",
                "Night Market",
                "en",
                "Medium",
                List.of("Slap", "Ghost notes"),
                Optional.of(Site.START.atZone(ZoneOffset.UTC)),
                Optional.empty());
        var second = new EpisodeCard(
                "/b",
                12,
                "A title that is long enough to need a second line on a telephone",
                "Night Market",
                "en",
                "Easy",
                List.of("Finger"),
                Optional.empty(),
                Optional.empty());
        return new View(
                "Trial",
                List.of("Slap", "Double thumb"),
                SVG,
                List.of(first, second),
                typed,
                new FieldProblems(List.of(FieldProblem.of("title", "error.404.detail"))),
                Optional.of(first),
                Optional.of(second));
    }

    /** What the template shows. */
    public record View(
            String title,
            List<String> techniques,
            String svg,
            List<EpisodeCard> cards,
            String typed,
            FieldProblems problems,
            Optional<EpisodeCard> earlier,
            Optional<EpisodeCard> later) {}
}
