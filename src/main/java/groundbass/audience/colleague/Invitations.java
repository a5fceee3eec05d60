package groundbass.audience.colleague;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.series.Colleagues;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import groundbass.form.Outcome;
import groundbass.post.EmailAddress;
import groundbass.post.Outbox;
import groundbass.store.DatabaseClock;
import groundbass.store.RandomId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Invitations to work on a series, to have a desk, and to take over what another owned. Whether an address has a desk
 * already changes nothing of what its inviter sees. A link works once; looking at it does not use it up, because mail
 * scanners open what is mailed.
 */
public final class Invitations {
    /** How long a link works. */
    public static final Duration VALID = Duration.ofDays(7);

    /** How long an invitation that was not answered can be sent again. */
    static final Duration KEPT = Duration.ofDays(30);

    private static final String SELECT = "select id, email, offer, series_id as series, invited_by as by_educator,"
            + " created_at, expires_at from invitation ";

    private final Jdbi jdbi;
    private final Educators educators;
    private final SeriesCatalog catalog;
    private final Colleagues colleagues;
    private final Outbox outbox;
    private final Audit audit;
    private final Supplier<LetterHead> head;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public Invitations(
            Jdbi jdbi,
            Educators educators,
            SeriesCatalog catalog,
            Colleagues colleagues,
            Outbox outbox,
            Audit audit,
            Supplier<LetterHead> head,
            Clock clock) {
        this.jdbi = jdbi;
        this.educators = educators;
        this.catalog = catalog;
        this.colleagues = colleagues;
        this.outbox = outbox;
        this.audit = audit;
        this.head = head;
        this.clock = clock;
    }

    private record Row(
            String id,
            EmailAddress email,
            String offer,
            Optional<SeriesId> series,
            EducatorId byEducator,
            Instant createdAt,
            Instant expiresAt) {
        Invitation invitation() {
            return new Invitation(id, email, Offer.of(offer, series), byEducator, createdAt, expiresAt);
        }
    }

    /**
     * Invites whoever reads an address; an earlier invitation of theirs to the same series or to the site gives way.
     *
     * @param letter in which language the link is mailed; empty where nothing is mailed and the inviter passes it on
     */
    public Invited invite(EducatorId by, Offer offer, EmailAddress email, Optional<Locale> letter) {
        return jdbi.inTransaction(handle -> {
            Instant now = DatabaseClock.of(clock);
            var invitation = new Invitation(RandomId.next(), email, offer, by, now, now.plus(VALID));
            handle.createUpdate("delete from invitation where email = :email and "
                            + (offer.ofSeries().isPresent() ? "series_id = :series" : "series_id is null"))
                    .bind("email", email)
                    .bind("series", offer.ofSeries())
                    .execute();
            return enter(handle, invitation, letter);
        });
    }

    private Invited enter(Handle handle, Invitation invitation, Optional<Locale> letter) {
        var token = SecretToken.next();
        handle.createUpdate("""
                        insert into invitation
                            (id, token_hash, email, offer, series_id, invited_by, created_at, expires_at)
                        values (:id, :hash, :email, :word, :series, :by, :createdAt, :expiresAt)""")
                .bindMethods(invitation)
                .bind("hash", token.hash())
                .bind("word", invitation.offer().word())
                .bind("series", invitation.offer().ofSeries())
                .execute();
        audit.append(handle, invitation.by(), "invitation.sent", told(invitation));
        letter.ifPresent(locale -> outbox.put(new InvitationLetters(head.get(), locale)
                .invitation(invitation, name(invitation.by()), title(invitation.offer()), token)));
        return new Invited(invitation, token);
    }

    /** Makes the link of an invitation useless and sends another one, which works as long again. */
    public Invited sendAgain(EducatorId by, Invitation before, Optional<Locale> letter) {
        return invite(by, before.offer(), before.email(), letter);
    }

    /** What was offered, and whose series; no address. */
    private static String told(Invitation invitation) {
        return invitation.offer().ofSeries().map(series -> series + " ").orElse("")
                + invitation.offer().word();
    }

    /** Who has a name here, or had. */
    public String name(EducatorId id) {
        return educators.find(id).map(Educator::name).orElse("");
    }

    /** Of the series that is offered; empty where none is. */
    public String title(Offer offer) {
        return offer.ofSeries().flatMap(catalog::find).map(Series::title).orElse("");
    }

    /** Those to a series that are not answered, also those whose link works no more; the newest first. */
    public List<Invitation> of(SeriesId series) {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where series_id = :series order by created_at desc, id")
                        .bind("series", series)
                        .mapTo(Row.class)
                        .map(Row::invitation)
                        .list());
    }

    /** The same to the site. */
    public List<Invitation> ofSite() {
        return jdbi.withHandle(
                handle -> handle.createQuery(SELECT + "where series_id is null order by created_at desc, id")
                        .mapTo(Row.class)
                        .map(Row::invitation)
                        .list());
    }

    public Optional<Invitation> find(String id) {
        return jdbi.withHandle(handle -> find(handle, "id = :value", id));
    }

    /** What a link opens, as long as it works. */
    public Optional<Invitation> find(SecretToken token) {
        return jdbi.withHandle(handle -> find(handle, "token_hash = :value", token.hash()))
                .filter(invitation -> !invitation.isOver(clock.instant()));
    }

    /** What waits for the answer of somebody with a desk. */
    public List<Invitation> to(Educator educator) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where email = :email and expires_at > :now order by created_at, id")
                .bind("email", educator.email())
                .bind("now", clock.instant())
                .mapTo(Row.class)
                .map(Row::invitation)
                .list());
    }

    private static Optional<Invitation> find(Handle handle, String where, String value) {
        return handle.createQuery(SELECT + "where " + where + " for update")
                .bind("value", value)
                .mapTo(Row.class)
                .findOne()
                .map(Row::invitation);
    }

    /** @return whether it was still there */
    public boolean withdraw(EducatorId by, Invitation invitation) {
        return end(by, invitation, "invitation.withdrawn");
    }

    /** The answer of whom it was sent to. @return whether it was still there */
    public boolean decline(Educator who, Invitation invitation) {
        return isTo(who, invitation) && end(who.id(), invitation, "invitation.declined");
    }

    private boolean end(EducatorId by, Invitation invitation, String what) {
        return jdbi.inTransaction(handle -> {
            boolean was = delete(handle, invitation);
            if (was) {
                audit.append(handle, by, what, told(invitation));
            }
            return was;
        });
    }

    private static boolean delete(Handle handle, Invitation invitation) {
        return handle.createUpdate("delete from invitation where id = :id")
                        .bind("id", invitation.id())
                        .execute()
                == 1;
    }

    /** Whether it was sent to the address with which they sign in. */
    public static boolean isTo(Educator who, Invitation invitation) {
        return who.email().equals(invitation.email().value());
    }

    /** Accepts for somebody with a desk. @return whether it was theirs and could still be accepted */
    public boolean accept(Educator who, String id) {
        return jdbi.inTransaction(handle -> find(handle, "id = :value", id)
                .filter(invitation -> isTo(who, invitation) && !invitation.isOver(clock.instant()))
                .filter(invitation -> delete(handle, invitation))
                .map(invitation -> give(handle, who.id(), invitation))
                .isPresent());
    }

    /**
     * Opens a desk for whoever has the link and accepts for them.
     *
     * @return empty where the link works no more; refused where there is a desk under this address, or something is wrong
     *     with what was typed, and then the link stays as it was
     */
    public Optional<Outcome<Educator>> accept(SecretToken token, String name, String password) {
        var invitation = find(token);
        if (invitation.isEmpty() || invitation.get().offer().handsOver()) {
            return Optional.empty();
        }
        String email = invitation.get().email().value();
        var problems = educators.invitedProblems(name, email, password);
        if (!problems.isEmpty()) {
            return Optional.of(Outcome.refused(problems));
        }
        var stored = educators.store(password);
        return jdbi.inTransaction(
                handle -> find(handle, "token_hash = :value", token.hash()).map(found -> educators
                        .openDesk(handle, name, email, stored, found.offer() instanceof Offer.OwnDesk)
                        .map(educator -> take(handle, educator, found))
                        .orElseGet(() -> Outcome.refused("name", "people.problem.known"))));
    }

    private Outcome<Educator> take(Handle handle, Educator educator, Invitation invitation) {
        delete(handle, invitation);
        give(handle, educator.id(), invitation);
        return Outcome.done(educator);
    }

    private Invitation give(Handle handle, EducatorId who, Invitation invitation) {
        audit.append(handle, who, "invitation.accepted", told(invitation));
        if (invitation.offer() instanceof Offer.InSeries part) {
            giveSeries(handle, who, part);
        } else if (invitation.offer() instanceof Offer.OwnDesk) {
            educators.allowBeginning(handle, who);
        } else {
            educators.setOwner(handle, who);
            audit.append(handle, who, "site.handed", who.value());
            endOffersOfTheSite(handle);
        }
        return invitation;
    }

    /** Whoever hands a series over goes on writing in it. */
    private void giveSeries(Handle handle, EducatorId who, Offer.InSeries offer) {
        if (offer.part() != SeriesPart.OWNER) {
            colleagues.enter(handle, who, offer.series(), offer.part());
            return;
        }
        var before = catalog.find(offer.series()).orElseThrow().owner();
        if (!before.equals(who)) {
            colleagues.handOver(handle, who, offer.series(), who);
            colleagues.enter(handle, before, offer.series(), SeriesPart.EDITOR);
        }
        handle.createUpdate("delete from invitation where series_id = :series and offer = 'owner'")
                .bind("series", offer.series())
                .execute();
    }

    /** Withdraws what was offered of the site, once it is in other hands. */
    public static void endOffersOfTheSite(Handle handle) {
        handle.execute("delete from invitation where offer = 'site'");
    }

    /** Deletes what nobody has answered long after its link has stopped to work. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from invitation where expires_at < :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }
}
