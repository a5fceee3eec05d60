package groundbass.audience.colleague;

import groundbass.audience.student.LetterHead;
import groundbass.audience.student.SecretToken;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import groundbass.catalog.series.SeriesRows;
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
import java.util.stream.Stream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Invitations to work on a series, to have a desk, and to take over what another owned. Whoever had a desk when they were
 * invited, under an address that they have not typed there themselves, answers at it; everybody else needs the link, so that
 * nobody gets what was offered to an address by claiming it. Whether an address has a desk changes nothing of what its
 * inviter sees. A link works once; looking at it does not use it up, because mail
 * scanners open what is mailed.
 */
public final class Invitations {
    /** How long a link works. */
    public static final Duration VALID = Duration.ofDays(7);

    /** How long an invitation that was not answered can be sent again. */
    static final Duration KEPT = Duration.ofDays(30);

    private static final String SELECT =
            "select id, email, educator_id as to_educator, offer, series_id as series, invited_by as by_educator,"
                    + " created_at, expires_at from invitation ";

    private final Jdbi jdbi;
    private final Educators educators;
    private final SeriesCatalog catalog;
    private final Transfers transfers;
    private final Outbox outbox;
    private final Audit audit;
    private final Supplier<LetterHead> head;
    private final Clock clock;

    /** @param head who writes, asked anew for each letter */
    public Invitations(
            Jdbi jdbi,
            Educators educators,
            SeriesCatalog catalog,
            Transfers transfers,
            Outbox outbox,
            Audit audit,
            Supplier<LetterHead> head,
            Clock clock) {
        this.jdbi = jdbi;
        this.educators = educators;
        this.catalog = catalog;
        this.transfers = transfers;
        this.outbox = outbox;
        this.audit = audit;
        this.head = head;
        this.clock = clock;
    }

    private record Row(
            String id,
            EmailAddress email,
            Optional<EducatorId> toEducator,
            String offer,
            Optional<SeriesId> series,
            EducatorId byEducator,
            Instant createdAt,
            Instant expiresAt) {
        Invitation invitation() {
            return new Invitation(id, email, toEducator, Offer.of(offer, series), byEducator, createdAt, expiresAt);
        }
    }

    /**
     * Invites whoever reads an address; an earlier invitation of theirs to the same series or to the site gives way.
     *
     * @param letter in which language the link is mailed; empty where nothing is mailed and the inviter passes it on
     */
    public Invited invite(EducatorId by, Offer offer, EmailAddress email, Optional<Locale> letter) {
        var known = educators.withProvedEmail(email.value()).map(Educator::id);
        return send(by, offer, email, known, letter);
    }

    /**
     * Offers something to somebody with a desk, whatever their address is when they answer.
     *
     * @param email where they read letters
     */
    public Invited offer(EducatorId by, Offer offer, EducatorId to, EmailAddress email, Optional<Locale> letter) {
        return send(by, offer, email, Optional.of(to), letter);
    }

    private Invited send(
            EducatorId by, Offer offer, EmailAddress email, Optional<EducatorId> to, Optional<Locale> letter) {
        Instant now = DatabaseClock.of(clock);
        var invitation = new Invitation(RandomId.next(), email, to, offer, by, now, now.plus(VALID));
        return jdbi.inTransaction(handle -> {
            lock(handle, offer, Stream.concat(Stream.of(by), to.stream()));
            handle.createUpdate("delete from invitation where (email = :email or educator_id = :to) and "
                            + (offer.ofSeries().isPresent() ? "series_id = :series" : "series_id is null"))
                    .bind("email", email)
                    .bind("to", to)
                    .bind("series", offer.ofSeries())
                    .execute();
            return enter(handle, invitation, letter);
        });
    }

    /** People first and what is offered then, as everybody does who changes either; so nobody waits for each other. */
    private void lock(Handle handle, Offer offer, Stream<EducatorId> people) {
        educators.lock(handle, people.distinct().toList());
        offer.ofSeries().ifPresent(series -> SeriesRows.lock(handle, series));
    }

    private Invited enter(Handle handle, Invitation invitation, Optional<Locale> letter) {
        var token = SecretToken.next();
        handle.createUpdate("""
                        insert into invitation
                            (id, token_hash, email, educator_id, offer, series_id, invited_by, created_at, expires_at)
                        values (:id, :hash, :email, :to, :word, :series, :by, :createdAt, :expiresAt)""")
                .bindMethods(invitation)
                .bind("hash", token.hash())
                .bind("word", invitation.offer().word())
                .bind("series", invitation.offer().ofSeries())
                .execute();
        audit.append(handle, invitation.by(), AuditWord.INVITATION_SENT, told(invitation));
        letter.ifPresent(locale -> outbox.put(new InvitationLetters(head.get(), locale)
                .invitation(invitation, name(invitation.by()), title(invitation.offer()), token)));
        return new Invited(invitation, token);
    }

    /** Makes the link of an invitation useless and sends another one, which works as long again. */
    public Invited sendAgain(EducatorId by, Invitation before, Optional<Locale> letter) {
        return send(by, before.offer(), before.email(), before.to(), letter);
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
        return find("id = :value", id);
    }

    /** What a link opens, as long as it works. */
    public Optional<Invitation> find(SecretToken token) {
        return find("token_hash = :value", token.hash()).filter(this::holds);
    }

    /** What waits for the answer of somebody with a desk. */
    public List<Invitation> to(EducatorId educator) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        SELECT + "where educator_id = :educator and expires_at > :now order by created_at, id")
                .bind("educator", educator)
                .bind("now", clock.instant())
                .mapTo(Row.class)
                .map(Row::invitation)
                .list());
    }

    private Optional<Invitation> find(String where, String value) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT + "where " + where)
                .bind("value", value)
                .mapTo(Row.class)
                .findOne()
                .map(Row::invitation));
    }

    /** Whether its link works still, and who invited may do so still. */
    private boolean holds(Invitation invitation) {
        return !invitation.isOver(clock.instant()) && mayInvite(invitation.by(), invitation.offer());
    }

    private boolean mayInvite(EducatorId who, Offer offer) {
        return offer.ofSeries()
                .map(series -> catalog.open(who, Deed.KEEP, series).isPresent())
                .orElseGet(() ->
                        educators.standing(who).filter(SiteStanding::keepsSite).isPresent());
    }

    /** @return whether it was still there */
    public boolean withdraw(EducatorId by, Invitation invitation) {
        return end(by, invitation, AuditWord.INVITATION_WITHDRAWN);
    }

    /** The answer of whom it is to. @return whether it was still there */
    public boolean decline(EducatorId who, Invitation invitation) {
        return invitation.isTo(who) && end(who, invitation, AuditWord.INVITATION_DECLINED);
    }

    private boolean end(EducatorId by, Invitation invitation, AuditWord what) {
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

    /** Accepts for somebody at their desk. @return whether it was theirs and could still be accepted */
    public boolean accept(EducatorId who, String id) {
        var invitation = find(id).filter(one -> one.isTo(who));
        return invitation.isPresent() && accept(who, invitation.get());
    }

    /** Accepts for somebody with a desk who has the link. @return whether it was theirs and could still be accepted */
    public boolean accept(Educator who, SecretToken token) {
        var invitation = find(token).filter(one -> one.isLinkOf(who));
        return invitation.isPresent() && accept(who.id(), invitation.get());
    }

    private boolean accept(EducatorId who, Invitation invitation) {
        return jdbi.inTransaction(handle -> {
            lock(handle, invitation.offer(), Stream.of(who, invitation.by()));
            boolean can = educators.standing(who).isPresent() && holds(invitation) && delete(handle, invitation);
            if (can) {
                give(handle, who, invitation);
            }
            return can;
        });
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
        var problems = educators.invitedProblems(name, invitation.get().email().value(), password);
        if (!problems.isEmpty()) {
            return Optional.of(Outcome.refused(problems));
        }
        var stored = educators.store(password);
        return jdbi.inTransaction(handle -> {
            lock(handle, invitation.get().offer(), Stream.of(invitation.get().by()));
            return find(token).map(found -> openDesk(handle, found, name, stored));
        });
    }

    /** Somebody to whom it is has a desk already, whatever their address is by now. */
    private Outcome<Educator> openDesk(
            Handle handle, Invitation invitation, String name, Educators.StoredPassword password) {
        boolean mayBegin = invitation.offer() instanceof Offer.OwnDesk;
        return Optional.of(invitation)
                .filter(one -> one.to().isEmpty())
                .flatMap(one -> educators.openDesk(handle, name, one.email().value(), password, mayBegin))
                .map(educator -> take(handle, educator, invitation))
                .orElseGet(() -> Outcome.refused("name", "people.problem.known"));
    }

    private Outcome<Educator> take(Handle handle, Educator educator, Invitation invitation) {
        delete(handle, invitation);
        give(handle, educator.id(), invitation);
        return Outcome.done(educator);
    }

    private void give(Handle handle, EducatorId who, Invitation invitation) {
        audit.append(handle, who, AuditWord.INVITATION_ACCEPTED, told(invitation));
        if (invitation.offer() instanceof Offer.InSeries part) {
            giveSeries(handle, who, part);
        } else if (invitation.offer() instanceof Offer.OwnDesk) {
            educators.allowBeginning(handle, who);
        } else {
            transfers.acceptSite(handle, invitation.by(), who);
        }
    }

    private void giveSeries(Handle handle, EducatorId who, Offer.InSeries offer) {
        if (offer.part() == SeriesPart.OWNER) {
            transfers.acceptSeries(handle, catalog.find(offer.series()).orElseThrow(), who);
        } else {
            transfers.give(handle, who, offer.series(), offer.part());
        }
    }

    /** Deletes what nobody has answered long after its link has stopped to work. */
    public int purge() {
        return jdbi.withHandle(handle -> handle.createUpdate("delete from invitation where expires_at < :before")
                .bind("before", clock.instant().minus(KEPT))
                .execute());
    }
}
