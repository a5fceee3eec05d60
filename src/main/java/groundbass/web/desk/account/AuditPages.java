package groundbass.web.desk.account;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.SeriesRecord;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
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
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What was done at this desk and who tried to get in, newest first, in pages. */
public final class AuditPages implements PageGroup {
    static final int A_PAGE = 100;

    private static final String PATH = "/desk/audit";
    private static final String OF_SERIES = "/desk/series/{id}/record";

    private final DeskContext desk;
    private final Audit audit;
    private final Educators educators;
    private final SeriesRecord ofSeries;

    public AuditPages(DeskContext desk, Audit audit, Educators educators, SeriesRecord ofSeries) {
        this.desk = desk;
        this.audit = audit;
        this.educators = educators;
        this.ofSeries = ofSeries;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.get(OF_SERIES, Role.EDUCATOR, this::showSeries);
    }

    private void show(Context ctx) {
        var me = educators.find(desk.educator(ctx)).orElseThrow();
        // one more than is shown tells whether there is another page
        int skipped = (page(ctx) - 1) * A_PAGE;
        var found = desk.standing(ctx).keepsSite()
                ? audit.all(skipped, A_PAGE + 1)
                : audit.concerning(me.id(), skipped, A_PAGE + 1);
        show(ctx, Optional.empty(), found, Map.of());
    }

    /** Who did what in a series, colleagues too: for its owner. */
    private void showSeries(Context ctx) {
        var series = desk.series(ctx, Deed.KEEP);
        var found = ofSeries.of(series.id(), (page(ctx) - 1) * A_PAGE, A_PAGE + 1);
        var ids = found.stream()
                .flatMap(entry -> Stream.of(entry.detail().split(" ")))
                .filter(IdForm::isId)
                .collect(Collectors.toSet());
        show(ctx, Optional.of(series), found, ofSeries.titles(series.id(), ids));
    }

    /** @param lessons titles of lessons by their ids */
    private void show(Context ctx, Optional<Series> series, List<AuditEntry> found, Map<String, String> lessons) {
        int page = page(ctx);
        var me = educators.find(desk.educator(ctx)).orElseThrow();
        var names = new HashMap<String, Optional<String>>();
        Function<String, Optional<String>> named = id -> names.computeIfAbsent(id, this::name);
        var words = new Words(me, named, lessons, desk.pages().reader(ctx));
        var rows = found.stream().limit(A_PAGE).map(words::row).toList();
        var newer = page == 1 ? Optional.<String>empty() : Optional.of(ctx.path() + "?page=" + (page - 1));
        var older = Optional.of(ctx.path() + "?page=" + (page + 1)).filter(path -> found.size() > A_PAGE);
        desk.pages().show(ctx, "desk/audit", new View(series, rows, newer, older));
    }

    private Optional<String> name(String id) {
        return EducatorId.parse(id).flatMap(educators::find).map(Educator::name);
    }

    private static int page(Context ctx) {
        String text = Optional.ofNullable(ctx.queryParam("page")).orElse("1");
        return text.matches("[1-9][0-9]{0,5}") ? Integer.parseInt(text) : 1;
    }

    /** What the page shows; of all that concerns the desk, or of one series. */
    public record View(Optional<Series> series, List<Row> rows, Optional<String> newer, Optional<String> older) {}

    /** An entry in words. */
    public record Row(Instant at, String who, String what, String detail) {}

    /**
     * Puts entries into words.
     *
     * @param names of educators by their ids, also of those whose desk is closed
     * @param lessons titles by ids
     */
    private record Words(
            Educator me, Function<String, Optional<String>> names, Map<String, String> lessons, Reader reader) {
        Row row(AuditEntry entry) {
            return new Row(
                    entry.at(), doer(entry), said(AuditWord.key(entry.what()), entry.what()), detail(entry.detail()));
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
                            .map(word -> word(word, detail))
                            .filter(word -> !word.isEmpty())
                            .collect(Collectors.joining(" "));
        }

        /** An id alone tells a person nothing, unless it is a person's or a lesson's whose title is not there besides. */
        private String word(String word, String detail) {
            if (!IdForm.isId(word)) {
                return Messages.of(reader.locale()).has(word)
                        ? reader.say(Message.of(word))
                        : said("people.part." + word, word);
            }
            String title = lessons.getOrDefault(word, "");
            return title.isEmpty() || detail.contains(title) ? names.apply(word).orElse("") : title;
        }

        private String said(String key, String otherwise) {
            return Messages.of(reader.locale()).has(key) ? reader.say(Message.of(key)) : otherwise;
        }
    }
}
