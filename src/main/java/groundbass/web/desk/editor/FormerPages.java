package groundbass.web.desk.editor;

import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;

/**
 * Where the page of a lesson sent its form while a lesson was one page. Such a page can be open in a browser while the
 * program is renewed; what is typed in it is given back, to be copied into the rooms. Nothing is stored here.
 */
public final class FormerPages implements PageGroup {
    private final DeskContext desk;

    public FormerPages(DeskContext desk) {
        this.desk = desk;
    }

    @Override
    public void addTo(Routes routes) {
        List.of("", "/draft", "/look").forEach(way -> routes.post(DeskContext.EPISODE + way, Role.ANYONE, this::tell));
    }

    private void tell(Context ctx) {
        var typed = ctx.formParamMap().entrySet().stream()
                .flatMap(entry -> entry.getValue().stream().map(value -> new Typed(entry.getKey(), value)))
                .filter(entry -> !entry.text().isBlank())
                .toList();
        ctx.status(HttpStatus.GONE);
        desk.pages().show(ctx, "desk/former", new View(DeskContext.path(ctx), typed));
    }

    /** A field by the name that the page gave it, and what stands in it. */
    public record Typed(String field, String text) {
        /** Whether it is longer than a word or a choice. */
        public boolean isLong() {
            return text.contains("\n") || text.length() > 60;
        }
    }

    /** @param path of the lesson on the desk */
    public record View(String path, List<Typed> typed) {}
}
