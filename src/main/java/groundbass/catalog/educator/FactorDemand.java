package groundbass.catalog.educator;

import groundbass.form.Outcome;
import groundbass.store.NamedValues;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Whether a site demands a second factor of everybody with a desk. It is asked of the rows each time, so that it holds on
 * every server from the moment on at which it is chosen.
 */
public final class FactorDemand {
    private static final String NAME = "desk.second-factor";
    private static final String DEMANDED = "demanded";
    private static final String LACKS = "not exists (select 1 from second_factor f where f.educator_id = e.id)";

    private final Jdbi jdbi;
    private final Audit audit;

    FactorDemand(Jdbi jdbi, Audit audit) {
        this.jdbi = jdbi;
        this.audit = audit;
    }

    public boolean isOn() {
        return jdbi.withHandle(handle ->
                NamedValues.find(handle, NAME).filter(DEMANDED::equals).isPresent());
    }

    /** Whether somebody with a desk still has to set one up before anything else of it opens. */
    public boolean lacks(EducatorId educator) {
        return jdbi.withHandle(handle -> handle.createQuery("select count(*) from educator e where e.id = :id and "
                                + "exists (select 1 from setting s where s.name = :name and s.chosen = :demanded) and "
                                + LACKS)
                        .bind("id", educator)
                        .bind("name", NAME)
                        .bind("demanded", DEMANDED)
                        .mapTo(Integer.class)
                        .one()
                > 0);
    }

    private static boolean hasNone(Handle handle, EducatorId educator) {
        return handle.createQuery("select count(*) from educator e where e.id = :id and " + LACKS)
                        .bind("id", educator)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }

    /** How many open desks have none. */
    public int lacking() {
        return jdbi.withHandle(
                handle -> handle.createQuery("select count(*) from educator e where e.ended_at is null and " + LACKS)
                        .mapTo(Integer.class)
                        .one());
    }

    /**
     * Demands it, or no longer does.
     *
     * @param who keeps the site, and has to have one first, or their own choice would turn them away from the page where it
     *            is made
     */
    public Outcome<Boolean> choose(EducatorId who, boolean demanded) {
        return jdbi.inTransaction(handle -> {
            if (demanded && hasNone(handle, who)) {
                return Outcome.refused("demanded", "catalog.problem.factor.own-first");
            }
            if (demanded != isOn()) {
                NamedValues.put(handle, NAME, demanded ? DEMANDED : "");
                audit.append(
                        handle, who, demanded ? AuditWord.FACTOR_DEMANDED : AuditWord.FACTOR_UP_TO_EACH, who.value());
            }
            return Outcome.done(demanded);
        });
    }
}
