package groundbass.web.student.lesson;

import groundbass.effort.Budget;
import groundbass.effort.ConcurrencyLimit;
import groundbass.effort.Heap;
import groundbass.engraving.options.Staves;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.text.Messages;
import groundbass.web.answer.CachedResponse;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * The sheet of a line that is out, set anew so that its systems fill a screen: larger notes then mean shorter systems and
 * nothing to scroll sideways. Drawn from the line's text of the release by the program as it is today. Thread-safe.
 */
public final class FittedSheets implements PageGroup {
    private static final String SVG = "image/svg+xml";
    /** A later version of the program may draw it better. */
    private static final String A_DAY = "public, max-age=86400";

    private static final int PART_OF_HEAP = 32;
    /** Widths in staff spaces: few enough that readers with like screens share a drawing. */
    private static final int NARROWEST = 20;

    private static final int WIDEST = 160;
    private static final int STEP = 4;

    private static final Map<String, Staves> STAVES =
            Map.of("both", Staves.BOTH, "notation", Staves.NOTATION_ONLY, "tab", Staves.TAB_ONLY);

    /** One drawing. */
    private record Wish(ReleaseId release, String line, Staves staves, int width) {}

    private final Lessons lessons;
    private final ReleaseContents contents;
    private final RateLimits limits;
    private final Budget budget;
    private final TimedCache<Wish, CachedResponse> drawn;

    public FittedSheets(Lessons lessons, ReleaseContents contents, RateLimits limits, Clock clock) {
        this.lessons = lessons;
        this.contents = contents;
        this.limits = limits;
        // a class behind one address draws each sheet once; a page that waits longer shows the drawing that it has
        var machine = new ConcurrencyLimit(1, 8, Duration.ofSeconds(4));
        this.budget = new Budget(machine, 8, Duration.ofSeconds(60), Duration.ofMinutes(5), clock);
        this.drawn = TimedCache.within(Heap.partOf(PART_OF_HEAP), CachedResponse::size);
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/sheet/{release}/{line}/{staves}/{width}", Role.ANYONE, this::sheet);
    }

    private void sheet(Context ctx) {
        limits.demand(ctx, Limit.SHEET);
        var release = ReleaseId.parse(ctx.pathParam("release"))
                .flatMap(lessons::published)
                .orElseThrow(NotFoundResponse::new);
        var staves = Optional.ofNullable(STAVES.get(ctx.pathParam("staves"))).orElseThrow(NotFoundResponse::new);
        int width = width(ctx.pathParam("width")).orElseThrow(NotFoundResponse::new);
        var wish = new Wish(release.id(), ctx.pathParam("line"), staves, width);
        drawn.get(wish, () -> text(wish).map(text -> budget.spend(ctx.ip(), () -> draw(wish, release, text))))
                .orElseThrow(NotFoundResponse::new)
                .send(ctx, A_DAY);
    }

    private static Optional<Integer> width(String text) {
        return Optional.of(text)
                .filter(digits -> digits.matches("[1-9][0-9]{1,2}"))
                .map(Integer::valueOf)
                .filter(spaces -> spaces >= NARROWEST && spaces <= WIDEST && spaces % STEP == 0);
    }

    private Optional<String> text(Wish wish) {
        return contents.files(wish.release()).stream()
                .filter(file -> isTextOf(file, wish.line()))
                .findFirst()
                .flatMap(contents::text);
    }

    private static boolean isTextOf(ReleaseFile file, String line) {
        return file.role() == FileRole.LINE_TEXT && file.name().equals(line + ".txt");
    }

    private CachedResponse draw(Wish wish, Release release, String text) {
        var content = contents.page(release.id()).orElseThrow(NotFoundResponse::new);
        var messages = Messages.of(Locale.forLanguageTag(content.language()));
        var sheets = new Sheets(messages).with(release.spec().style());
        String prefix = wish.line() + "-fitted-";
        String svg = sheets.svg(LineText.read(text).line(), wish.width(), wish.staves(), prefix);
        return CachedResponse.of(svg.getBytes(StandardCharsets.UTF_8), SVG);
    }
}
