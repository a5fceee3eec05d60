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
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
        int skipped = (page - 1) * A_PAGE;
        var found = desk.standing(ctx).keepsSite()
                ? audit.all(skipped, A_PAGE + 1)
                : audit.concerning(me.id(), skipped, A_PAGE + 1);
        var names = new HashMap<String, Optional<String>>();
        var words = new Words(me, id -> names.computeIfAbsent(id, this::name), reader);
        var rows = found.stream().limit(A_PAGE).map(words::row).toList();
        boolean more = found.size() > A_PAGE;
        desk.pages().show(ctx, "desk/audit", new View(rows, newer(page), more ? older(page) : Optional.empty()));
    }

    private Optional<String> name(String id) {
        return EducatorId.parse(id).flatMap(educators::find).map(Educator::name);
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
    public record Row(Instant at, String who, String what, String detail) {}

    /**
     * Puts entries into words.
     *
     * @param names of educators by their ids, also of those whose desk is closed
     */
    private record Words(Educator me, Function<String, Optional<String>> names, Reader reader) {
        Row row(AuditEntry entry) {
            return new Row(
                    entry.at(),
                    doer(entry),
                    said("audit." + entry.what().replace(' ', '-'), entry.what()),
                    detail(entry.detail()));
        }

        private String doer(AuditEntry entry) {
            String who = who(entry.who());
            return entry.program()
                    .map(program -> reader.say(Message.of("audit.who.by-program", who, program)))
                    .orElse(who);
        }

        private String who(String who) {
            return names.apply(who)
                    .orElseGet(() ->
                            said("audit.who." + who.toLowerCase(Locale.ROOT).replace(' ', '-'), who));
        }

        private String detail(String detail) {
            if (detail.equals(me.id().value())) {
                return reader.say(Message.of("audit.detail.you"));
            }
            return Messages.of(reader.locale()).has(detail)
                    ? said(detail, detail)
                    : Stream.of(detail.split(" "))
                            .map(this::word)
                            .filter(word -> !word.isEmpty())
                            .collect(Collectors.joining(" "));
        }

        /** An id alone tells a person nothing, unless it is a person's. */
        private String word(String word) {
            return IdForm.isId(word) ? names.apply(word).orElse("") : said("people.part." + word, word);
        }

        private String said(String key, String otherwise) {
            return Messages.of(reader.locale()).has(key) ? reader.say(Message.of(key)) : otherwise;
        }
    }
}
