package groundbass.catalog.series;

import groundbass.catalog.ZoneNames;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import groundbass.store.DatabaseClock;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The series: made and changed by their owner, found by everyone. */
public final class SeriesCatalog {
    private static final Slug WITHOUT_LETTERS = new Slug("series");

    private final Jdbi jdbi;
    private final Audit audit;
    private final Clock clock;
    private final SeriesRepository rows;

    public SeriesCatalog(Jdbi jdbi, Audit audit, Clock clock) {
        this.jdbi = jdbi;
        this.audit = audit;
        this.clock = clock;
        this.rows = new SeriesRepository(jdbi);
    }

    public Outcome<Series> create(EducatorId owner, SeriesForm form) {
        var problems = form.problems();
        return problems.isEmpty()
                ? jdbi.inTransaction(handle -> create(handle, owner, form))
                : Outcome.refused(problems);
    }

    private Outcome<Series> create(Handle handle, EducatorId owner, SeriesForm form) {
        rows.lockSlugs(handle);
        Slug wanted = slug(form);
        boolean typed = !form.slug().isBlank();
        if (typed && rows.find(wanted).isPresent()) {
            return Outcome.refused("slug", "catalog.problem.slug.taken", wanted.value());
        }
        var series = series(SeriesId.next(), owner, typed ? wanted : free(wanted), form);
        rows.insert(handle, series);
        audit.append(handle, owner, AuditWord.SERIES_CREATED, series.id().value());
        return Outcome.done(series);
    }

    /**
     * Takes in a series of another server, under the id that it has there.
     *
     * @param id that no series here has
     */
    public Outcome<Series> bringIn(EducatorId owner, SeriesId id, SeriesForm form, Instant createdAt) {
        var problems = form.problems();
        return problems.isEmpty()
                ? jdbi.inTransaction(handle -> bringIn(handle, owner, id, form, createdAt))
                : Outcome.refused(problems);
    }

    private Outcome<Series> bringIn(Handle handle, EducatorId owner, SeriesId id, SeriesForm form, Instant createdAt) {
        rows.lockSlugs(handle);
        Slug slug = slug(form);
        if (rows.find(slug).isPresent()) {
            return Outcome.refused("slug", "catalog.problem.slug.taken", slug.value());
        }
        var typed = series(id, owner, slug, form);
        var series = new Series(id, owner, slug, typed.title(), typed.summary(), typed.zone(), createdAt);
        rows.insert(handle, series);
        audit.append(handle, owner, AuditWord.SERIES_BROUGHT, id.value());
        return Outcome.done(series);
    }

    /** An address like the wanted one that no series has. */
    public Slug freeLike(Slug wanted) {
        return free(wanted);
    }

    private Series series(SeriesId id, EducatorId owner, Slug slug, SeriesForm form) {
        return new Series(
                id,
                owner,
                slug,
                form.title().strip(),
                form.summary().strip(),
                ZoneNames.read(form.zone()).orElseThrow(),
                DatabaseClock.of(clock));
    }

    private static Slug slug(SeriesForm form) {
        return Slug.parse(form.slug().strip()).orElseGet(() -> Slug.of(form.title(), WITHOUT_LETTERS));
    }

    private Slug free(Slug wanted) {
        return Stream.concat(Stream.of(wanted), IntStream.iterate(2, n -> n + 1).mapToObj(wanted::numbered))
                .filter(slug -> rows.find(slug).isEmpty())
                .findFirst()
                .orElseThrow();
    }

    /**
     * Changes a series. A blank slug leaves the present one; once something is published the slug stays, because
     * addresses that are out must keep working.
     */
    public Outcome<Series> edit(EducatorId who, SeriesId id, SeriesForm form) {
        var problems = form.problems();
        if (!problems.isEmpty()) {
            return Outcome.refused(problems);
        }
        return jdbi.inTransaction(handle -> {
            rows.lockSlugs(handle);
            rows.lock(handle, id);
            return rows.find(id)
                    .filter(series -> series.owner().equals(who))
                    .map(series -> edit(handle, series, form))
                    .orElse(Outcome.refused("", "catalog.problem.gone"));
        });
    }

    private Outcome<Series> edit(Handle handle, Series before, SeriesForm form) {
        Slug slug = Slug.parse(form.slug().strip()).orElse(before.slug());
        if (!slug.equals(before.slug())) {
            if (rows.hasPublished(before.id())) {
                return Outcome.refused(
                        "slug", "catalog.problem.slug.published", before.slug().value());
            }
            if (rows.find(slug).isPresent()) {
                return Outcome.refused("slug", "catalog.problem.slug.taken", slug.value());
            }
        }
        var typed = series(before.id(), before.owner(), slug, form);
        var after = new Series(
                before.id(), before.owner(), slug, typed.title(), typed.summary(), typed.zone(), before.createdAt());
        rows.update(handle, after);
        audit.append(
                handle, before.owner(), AuditWord.SERIES_CHANGED, before.id().value());
        return Outcome.done(after);
    }

    public Optional<Series> find(SeriesId id) {
        return rows.find(id);
    }

    public Optional<Series> find(Slug slug) {
        return rows.find(slug);
    }

    /** Until the transaction ends, nobody else numbers episodes of this series or renames it. */
    public boolean lock(Handle handle, SeriesId id) {
        return rows.lock(handle, id);
    }

    /** The series, where this educator may do that with it: for all others it is not there. */
    public Optional<Series> open(EducatorId who, Deed deed, SeriesId id) {
        return rows.find(who, deed, id);
    }

    /** Series with which this educator may do that, the oldest first. */
    public List<Series> open(EducatorId who, Deed deed) {
        return rows.all(who, deed);
    }

    /** What somebody is to a series; empty where they are nothing to it. */
    public Optional<SeriesPart> part(EducatorId who, SeriesId id) {
        return rows.part(who, id);
    }

    /** For everyone: the series, where something of it is out. */
    public Optional<Series> published(SeriesId id) {
        return find(id).filter(series -> rows.isOut(series.id()));
    }

    /** For everyone: the series of this address, where something of it is out. */
    public Optional<Series> published(Slug slug) {
        return find(slug).filter(series -> rows.isOut(series.id()));
    }

    /** For everyone: series with something published, the latest publication first. */
    public List<Series> published() {
        return rows.published();
    }
}
