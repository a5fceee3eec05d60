package groundbass.audience.colleague;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.PreviewLinks;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;

/**
 * Parts of series, and the site, in other hands, with whatever hangs on them: what their former owner has offered is offered
 * no more, private links of whoever writes no more end, and who gave something away is told. All within the caller's
 * transaction, which has locked the people.
 */
public final class Transfers {
    private final Educators educators;
    private final SeriesCatalog catalog;
    private final Colleagues colleagues;
    private final PreviewLinks previews;
    private final Outbox outbox;
    private final Audit audit;
    private final Supplier<LetterHead> head;
    private final Supplier<Locale> deskLanguage;
    private final Clock clock;

    /**
     * @param head who writes, asked anew for each letter
     * @param deskLanguage in which educators get theirs
     */
    public Transfers(
            Educators educators,
            SeriesCatalog catalog,
            Colleagues colleagues,
            PreviewLinks previews,
            Outbox outbox,
            Audit audit,
            Supplier<LetterHead> head,
            Supplier<Locale> deskLanguage,
            Clock clock) {
        this.educators = educators;
        this.catalog = catalog;
        this.colleagues = colleagues;
        this.previews = previews;
        this.outbox = outbox;
        this.audit = audit;
        this.head = head;
        this.deskLanguage = deskLanguage;
        this.clock = clock;
    }

    /** Gives somebody a part in a series beside its owner, who stays what they are. */
    void give(Handle handle, EducatorId who, SeriesId series, SeriesPart part) {
        colleagues.enter(handle, who, series, part);
        endLinks(handle, who, series);
    }

    /** Ends a colleague's part in a series. @return whether they had one */
    boolean end(Handle handle, EducatorId by, EducatorId who, SeriesId series) {
        boolean was = colleagues.end(handle, by, who, series);
        endLinks(handle, who, series);
        return was;
    }

    /** Gives a series another owner; whoever owned it is nothing to it then. */
    void handOver(Handle handle, EducatorId by, Series series, EducatorId to) {
        changeOwner(handle, by, series, to);
        endLinks(handle, series.owner(), series.id());
    }

    /** Gives a series to whom its owner has offered it; the owner goes on writing in it, and is told. */
    void acceptSeries(Handle handle, Series series, EducatorId to) {
        changeOwner(handle, to, series, to);
        give(handle, series.owner(), series.id(), SeriesPart.EDITOR);
        tell(series.owner(), to, Optional.of(series.title()));
    }

    private void changeOwner(Handle handle, EducatorId by, Series series, EducatorId to) {
        colleagues.handOver(handle, by, series.id(), to);
        handle.createUpdate("delete from invitation where series_id = :series")
                .bind("series", series.id())
                .execute();
    }

    /** Gives the site to whom its owner has offered it; the owner goes on as a teacher, and is told. */
    void acceptSite(Handle handle, EducatorId owner, EducatorId to) {
        educators.setOwner(handle, to);
        audit.append(handle, to, AuditWord.SITE_HANDED, to.value());
        endInvitationsToTheSite(handle);
        tell(owner, to, Optional.empty());
    }

    /** Withdraws what the site's former owner has offered of it. */
    public static void endInvitationsToTheSite(Handle handle) {
        handle.execute("delete from invitation where series_id is null");
    }

    /** Ends private links to lessons of a series that somebody made who does not write in it any more. */
    private void endLinks(Handle handle, EducatorId who, SeriesId series) {
        boolean writes =
                catalog.part(who, series).filter(part -> part.may(Deed.WRITE)).isPresent();
        if (!writes) {
            previews.withdrawAll(handle, who, series);
        }
    }

    /** An address that mail cannot reach (an educator may sign in with anything that looks like one) gets no letter. */
    private void tell(EducatorId former, EducatorId taker, Optional<String> title) {
        var letters = new InvitationLetters(head.get(), deskLanguage.get());
        var before = educators.find(former).orElseThrow();
        var now = educators.find(taker).orElseThrow();
        EmailAddress.read(before.email())
                .ifPresent(to -> outbox.put(letters.handed(to, before.name(), now.name(), title, clock.instant())));
    }
}
