package groundbass.catalog.series;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.store.DatabaseClock;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** Who works on which series beside its owner, as rows; and series that change their owner. */
public final class Colleagues {
    private static final String SELECT = """
            select c.educator_id as id, e.name, e.email, c.part, c.since
            from series_colleague c join educator e on e.id = c.educator_id\s""";

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;

    public Colleagues(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
    }

    /** Those of a series, in the order in which they came. */
    public List<Colleague> of(SeriesId series) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where c.series_id = :series order by c.since, c.educator_id")
                        .bind("series", series)
                        .mapTo(Colleague.class)
                        .list());
    }

    public Optional<Colleague> of(SeriesId series, EducatorId who) {
        return of(series).stream().filter(one -> one.id().equals(who)).findFirst();
    }

    /** Gives somebody a part in a series, in the place of one that they had; its owner stays what they are. */
    public void enter(Handle handle, EducatorId who, SeriesId series, SeriesPart part) {
        SeriesRows.lock(handle, series);
        if (owns(handle, who, series)) {
            return;
        }
        remove(handle, who, series);
        handle.createUpdate("""
                        insert into series_colleague (series_id, educator_id, part, since)
                        values (:series, :who, :part, :now)""")
                .bind("series", series)
                .bind("who", who)
                .bind("part", part)
                .bind("now", DatabaseClock.of(clock))
                .execute();
        audit.append(handle, who, AuditWord.COLLEAGUE_JOINED, series + " " + part.value());
    }

    /** Ends what somebody has to do with a series. @return whether there was something to end */
    public boolean end(Handle handle, EducatorId by, EducatorId who, SeriesId series) {
        boolean was = remove(handle, who, series);
        if (was) {
            audit.append(handle, by, AuditWord.COLLEAGUE_ENDED, series + " " + who);
        }
        return was;
    }

    private static boolean remove(Handle handle, EducatorId who, SeriesId series) {
        return handle.createUpdate("delete from series_colleague where series_id = :series and educator_id = :who")
                        .bind("series", series)
                        .bind("who", who)
                        .execute()
                == 1;
    }

    private static boolean owns(Handle handle, EducatorId who, SeriesId series) {
        return handle.createQuery("select count(*) from series where id = :series and educator_id = :who")
                        .bind("series", series)
                        .bind("who", who)
                        .mapTo(Integer.class)
                        .one()
                == 1;
    }

    /** Gives a series another owner. */
    public void handOver(Handle handle, EducatorId by, SeriesId series, EducatorId to) {
        SeriesRows.lock(handle, series);
        remove(handle, to, series);
        handle.createUpdate("update series set educator_id = :to where id = :series")
                .bind("to", to)
                .bind("series", series)
                .execute();
        audit.append(handle, by, AuditWord.SERIES_HANDED, series + " " + to);
    }

    /** All series in which somebody has a part beside their owners. */
    public List<SeriesId> seriesOf(EducatorId who) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        "select series_id from series_colleague where educator_id = :who order by series_id")
                .bind("who", who)
                .mapTo(SeriesId.class)
                .list());
    }
}
