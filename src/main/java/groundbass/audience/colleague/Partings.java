package groundbass.audience.colleague;

import groundbass.audience.student.EducatorAccess;
import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import groundbass.form.Outcome;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Ends what somebody has to do with a series or with the site. What they wrote stays, and so does their name beside it. */
public final class Partings {
    private final Jdbi jdbi;
    private final Educators educators;
    private final SeriesCatalog catalog;
    private final Colleagues colleagues;
    private final Transfers transfers;
    private final Sessions sessions;
    private final EducatorAccess access;
    private final Audit audit;

    public Partings(
            Jdbi jdbi,
            Educators educators,
            SeriesCatalog catalog,
            Colleagues colleagues,
            Transfers transfers,
            Sessions sessions,
            EducatorAccess access,
            Audit audit) {
        this.jdbi = jdbi;
        this.educators = educators;
        this.catalog = catalog;
        this.colleagues = colleagues;
        this.transfers = transfers;
        this.sessions = sessions;
        this.access = access;
        this.audit = audit;
    }

    /**
     * Ends a colleague's part in a series at once, and private links to its lessons that they made.
     *
     * @return whether they had one
     */
    public boolean fromSeries(EducatorId by, EducatorId who, SeriesId series) {
        return jdbi.inTransaction(handle -> end(handle, by, who, series));
    }

    private boolean end(Handle handle, EducatorId by, EducatorId who, SeriesId series) {
        handle.createUpdate(
                        "delete from invitation where series_id = :series and (email = :email or educator_id = :who)")
                .bind("series", series)
                .bind("email", address(who))
                .bind("who", who)
                .execute();
        return transfers.end(handle, by, who, series);
    }

    /**
     * Closes somebody's desk: their sessions end, their links work no more, and they cannot sign in.
     *
     * @param heir who takes their series over; needed where they own any
     * @return the series that changed their owner; refused where nobody takes them over, and for who keeps the site
     */
    public Outcome<List<Series>> fromSite(EducatorId by, EducatorId who, Optional<EducatorId> heir) {
        return jdbi.inTransaction(handle -> {
            // whoever accepts something meanwhile waits, and finds the desk closed
            educators.lock(handle, Stream.concat(Stream.of(who), heir.stream()).toList());
            var standing = educators.standing(who);
            if (standing.isEmpty()) {
                return Outcome.<List<Series>>refused("", "people.problem.gone");
            }
            if (standing.get() == SiteStanding.OWNER) {
                return Outcome.<List<Series>>refused("", "people.problem.owner");
            }
            var owned = catalog.open(who, Deed.KEEP);
            var taker = heir.filter(one -> !one.equals(who))
                    .filter(one -> educators.standing(one).isPresent());
            if (!owned.isEmpty() && taker.isEmpty()) {
                return Outcome.<List<Series>>refused("heir", "people.problem.heir", owned.size());
            }
            owned.forEach(series -> transfers.handOver(handle, by, series, taker.orElseThrow()));
            close(handle, by, who);
            return Outcome.done(owned);
        });
    }

    private String address(EducatorId who) {
        return educators.find(who).map(Educator::email).orElse("");
    }

    private void close(Handle handle, EducatorId by, EducatorId who) {
        colleagues.seriesOf(who).forEach(series -> end(handle, by, who, series));
        educators.closeDesk(handle, by, who);
        access.forget(handle, who);
        handle.createUpdate("delete from invitation where email = :email or educator_id = :who or invited_by = :who")
                .bind("email", address(who))
                .bind("who", who)
                .execute();
        sessions.closeAll(new Person.OfEducator(who));
        audit.append(handle, by, AuditWord.DESK_CLOSED, who.value());
    }

    /** What somebody has to do with which series, those that they own first. */
    public List<Held> held(EducatorId who) {
        return catalog.open(who, Deed.READ_FIGURES).stream()
                .map(series ->
                        new Held(series.title(), catalog.part(who, series.id()).orElseThrow()))
                .toList();
    }

    /** A series, by its title, and what somebody is to it. */
    public record Held(String series, SeriesPart part) {}
}
