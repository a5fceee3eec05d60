package groundbass.web.desk.account;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.identity.IdForm;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What was done at this desk and who tried to get in, newest first, in pages. */
public final class AuditPages implements PageGroup {
    static final int A_PAGE = 100;

    private static final String PATH = "/desk/audit";

    private final DeskContext desk;
    private final Audit audit;
    private final Educators educators;

    public AuditPages(DeskContext desk, Audit audit, Educators educators) {
        this.desk = desk;
        this.audit = audit;
        this.educators = educators;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        int page = page(ctx);
        var reader = desk.pages().reader(ctx);
        var me = educators.find(desk.educator(ctx)).orElseThrow();
        // one more than is shown tells whether there is another page
        var found = audit.concerning(me.id(), (page - 1) * A_PAGE, A_PAGE + 1);
        var rows = found.stream()
                .limit(A_PAGE)
                .map(entry -> Row.of(entry, me, reader))
                .toList();
        boolean more = found.size() > A_PAGE;
        desk.pages().show(ctx, "desk/audit", new View(rows, newer(page), more ? older(page) : Optional.empty()));
    }

    private static int page(Context ctx) {
        String text = Optional.ofNullable(ctx.queryParam("page")).orElse("1");
        return text.matches("[1-9][0-9]{0,5}") ? Integer.parseInt(text) : 1;
    }

    private static Optional<String> newer(int page) {
        return page == 1 ? Optional.empty() : Optional.of(PATH + "?page=" + (page - 1));
    }

    private static Optional<String> older(int page) {
        return Optional.of(PATH + "?page=" + (page + 1));
    }

    /** What the page shows. */
    public record View(List<Row> rows, Optional<String> newer, Optional<String> older) {}

    /** An entry in words. */
    public record Row(Instant at, String who, String what, String detail) {
        static Row of(AuditEntry entry, Educator me, Reader reader) {
            return new Row(
                    entry.at(),
                    doer(entry, me, reader),
                    said("audit." + entry.what().replace(' ', '-'), entry.what(), reader),
                    detail(entry.detail(), me.id(), reader));
        }

        private static String doer(AuditEntry entry, Educator me, Reader reader) {
            String who = who(entry.who(), me, reader);
            return entry.program()
                    .map(program -> reader.say(Message.of("audit.who.by-program", who, program)))
                    .orElse(who);
        }

        private static String who(String who, Educator me, Reader reader) {
            return who.equals(me.id().value())
                    ? me.name()
                    : said("audit.who." + who.toLowerCase(Locale.ROOT).replace(' ', '-'), who, reader);
        }

        /** An id alone tells a person nothing. */
        private static String detail(String detail, EducatorId me, Reader reader) {
            if (detail.equals(me.value())) {
                return reader.say(Message.of("audit.detail.you"));
            }
            return IdForm.isId(detail) ? "" : said(detail, detail, reader);
        }

        private static String said(String key, String otherwise, Reader reader) {
            return Messages.of(reader.locale()).has(key) ? reader.say(Message.of(key)) : otherwise;
        }
    }
}
