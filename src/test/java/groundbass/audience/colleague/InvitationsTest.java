package groundbass.audience.colleague;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.audience.Audience;
import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SecondFactors;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesPart;
import groundbass.document.Level;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.post.OutboxMail;
import groundbass.release.BuildSpec;
import groundbass.site.Accounts;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CyclicBarrier;
import java.util.concurrent.Executors;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Ours, all of it: what the desk's pages promise of invitations and their ends. */
class InvitationsTest {
    private static final String PASSWORD = "quartz lantern boat seven";
    private static final EmailAddress BEA = new EmailAddress("bea@trial.example");
    private static final Optional<Locale> MAILED = Optional.of(Locale.ENGLISH);

    /** A site with its keeper, who owns one series. */
    private static final class Scene {
        final Database database;
        final Audience audience;
        final Educators.StoredPassword password;
        final Educator keeper;
        final Series series;

        Scene(Database database) {
            this.database = database;
            audience = new Audience(database);
            password = TrialEducators.stored(PASSWORD);
            keeper = educator("Keeper", "keeper@trial.example");
            series = audience.catalog
                    .create(keeper.id(), new SeriesForm("Low Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
        }

        Educator educator(String name, String email) {
            audience.clock.advance(Duration.ofSeconds(1));
            return TrialEducators.create(database.jdbi(), audience.clock, name, email, PASSWORD);
        }

        Offer offer(SeriesPart part) {
            return new Offer.InSeries(series.id(), part);
        }

        Invited invite(SeriesPart part) {
            return audience.invitations.invite(keeper.id(), offer(part), BEA, MAILED);
        }

        /** Bea comes by the link of an invitation. */
        Educator bea(SeriesPart part) {
            return audience.invitations
                    .accept(invite(part).token(), "Bea", PASSWORD)
                    .orElseThrow()
                    .result()
                    .orElseThrow();
        }

        Educator educatorAtOnce(String email) {
            return database.jdbi()
                    .inTransaction(handle -> audience.educators.openDesk(handle, "Bea", email, password, true))
                    .orElseThrow();
        }

        /** Somebody types this address as their own. */
        Educator claim(Educator who, String email) {
            return audience.educators
                    .change(who.id(), who.name(), email, PASSWORD)
                    .result()
                    .orElseThrow();
        }

        /** The keeper offers something, and it is accepted at the desk. */
        void acceptAt(Educator desk, Offer offer) {
            var by = offer instanceof Offer.InSeries
                    ? audience.catalog.find(series.id()).orElseThrow().owner()
                    : keeper.id();
            var offered = audience.invitations.offer(by, offer, desk.id(), new EmailAddress(desk.email()), MAILED);
            assertThat(audience.invitations.accept(
                            desk.id(), offered.invitation().id()))
                    .isTrue();
        }

        /** Of a lesson of the series, never built. */
        String release() {
            var parts = Parts.over(database.jdbi(), audience.clock);
            var lesson = parts.desk()
                    .create(keeper.id(), series.id(), "Rope Ladder", Level.BEGINNER)
                    .result()
                    .orElseThrow();
            var revision = parts.desk()
                    .keep(keeper.id(), lesson.id(), "first")
                    .result()
                    .orElseThrow();
            var spec = new BuildSpec(
                    revision.id(),
                    1,
                    "Low Tide",
                    1,
                    "low-tide",
                    "http://localhost/e/1",
                    LocalDate.EPOCH,
                    BuildSpec.RENDERERS);
            return database.jdbi()
                    .inTransaction(handle ->
                            parts.releases().trials().create(handle, lesson.id(), spec, audience.clock.instant()))
                    .value();
        }

        Optional<SeriesPart> part(Educator who) {
            return audience.catalog.part(who.id(), series.id());
        }

        List<String> record() {
            return audience.audit.latest(50).stream().map(AuditEntry::what).toList();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkWorksOnceAndOpensADeskForWhatItOffers(Database database) {
        try (database) {
            var scene = new Scene(database);
            var invited = scene.invite(SeriesPart.EDITOR);
            assertThat(scene.audience.invitations.of(scene.series.id())).containsExactly(invited.invitation());
            assertThat(scene.audience.outbox.to(BEA))
                    .singleElement()
                    .extracting(letter -> letter.message().text())
                    .asString()
                    .contains("/desk/invitation/" + invited.token().value(), "Low Tide", "Keeper", "7 days");
            var weak = scene.audience
                    .invitations
                    .accept(invited.token(), "Bea", "qwertyuiopas")
                    .orElseThrow();
            assertThat(weak.problems()).extracting(FieldProblem::field).contains("password");
            var bea = scene.audience
                    .invitations
                    .accept(invited.token(), "Bea", PASSWORD)
                    .orElseThrow()
                    .result()
                    .orElseThrow();
            assertThat(bea.email()).isEqualTo(BEA.value());
            assertThat(scene.audience.educators.verify(BEA.value(), PASSWORD)).contains(bea);
            assertThat(scene.audience.educators.standing(bea.id())).contains(SiteStanding.GUEST);
            assertThat(scene.part(bea)).contains(SeriesPart.EDITOR);
            assertThat(scene.audience.invitations.accept(invited.token(), "Bea", PASSWORD))
                    .isEmpty();
            assertThat(scene.audience.invitations.of(scene.series.id())).isEmpty();
            assertThat(scene.record()).contains("invitation.sent", "invitation.accepted", "colleague.joined");
            assertThat(scene.audience.audit.latest(50).toString()).doesNotContain(BEA.value());
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aLinkEndsAfterAWeekAndWhenAnotherIsSentOrItIsWithdrawn(Database database) {
        try (database) {
            var scene = new Scene(database);
            var invitations = scene.audience.invitations;
            var first = scene.invite(SeriesPart.EDITOR);
            scene.audience.clock.advance(Duration.ofDays(7).minusSeconds(1));
            assertThat(invitations.find(first.token())).isPresent();
            scene.audience.clock.advance(Duration.ofSeconds(1));
            assertThat(invitations.find(first.token())).isEmpty();
            assertThat(invitations.accept(first.token(), "Bea", PASSWORD)).isEmpty();
            assertThat(invitations.of(scene.series.id())).as("told as over").hasSize(1);

            var second = invitations.sendAgain(scene.keeper.id(), first.invitation(), MAILED);
            assertThat(invitations.find(second.token())).isPresent();
            assertThat(invitations.of(scene.series.id())).containsExactly(second.invitation());
            var third = invitations.sendAgain(scene.keeper.id(), second.invitation(), MAILED);
            assertThat(invitations.find(second.token())).isEmpty();
            assertThat(invitations.withdraw(scene.keeper.id(), third.invitation()))
                    .isTrue();
            assertThat(invitations.find(third.token())).isEmpty();
            assertThat(invitations.withdraw(scene.keeper.id(), third.invitation()))
                    .isFalse();

            scene.invite(SeriesPart.EDITOR);
            scene.audience.clock.advance(Duration.ofDays(36));
            assertThat(invitations.purge()).isZero();
            scene.audience.clock.advance(Duration.ofDays(2));
            assertThat(invitations.purge()).isEqualTo(1);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyADigestOfALinkIsStored(Database database) {
        try (database) {
            var scene = new Scene(database);
            var invited = scene.audience.invitations.invite(
                    scene.keeper.id(), scene.offer(SeriesPart.EDITOR), BEA, Optional.empty());
            var stored = database.jdbi().withHandle(handle -> handle.createQuery("select token_hash from invitation")
                    .mapTo(String.class)
                    .one());
            assertThat(stored)
                    .isEqualTo(invited.token().hash())
                    .isNotEqualTo(invited.token().value());
            assertThat(scene.audience.outbox.to(BEA)).as("nothing is mailed").isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoHasADeskAcceptsThereAndNobodyElseCan(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.educator("Bea", BEA.value());
            var cem = scene.educator("Cem", "cem@trial.example");
            var invited = scene.invite(SeriesPart.READER_OF_FIGURES);
            var taken = scene.audience
                    .invitations
                    .accept(invited.token(), "Another Bea", PASSWORD)
                    .orElseThrow();
            assertThat(taken.problems()).extracting(FieldProblem::key).containsExactly("people.problem.known");
            assertThat(scene.audience.invitations.accept(
                            cem.id(), invited.invitation().id()))
                    .isFalse();
            assertThat(scene.audience.invitations.decline(cem.id(), invited.invitation()))
                    .isFalse();
            assertThat(scene.audience.invitations.to(cem.id())).isEmpty();
            assertThat(scene.audience.invitations.to(bea.id())).containsExactly(invited.invitation());
            assertThat(scene.audience.invitations.accept(
                            bea.id(), invited.invitation().id()))
                    .isTrue();
            assertThat(scene.part(bea)).contains(SeriesPart.READER_OF_FIGURES);
            assertThat(scene.audience.educators.find(bea.id()).orElseThrow().name())
                    .isEqualTo("Bea");
            assertThat(scene.audience.educators.standing(bea.id())).contains(SiteStanding.TEACHER);

            var other = scene.invite(SeriesPart.EDITOR);
            assertThat(scene.audience.invitations.decline(bea.id(), other.invitation()))
                    .isTrue();
            assertThat(scene.part(bea)).contains(SeriesPart.READER_OF_FIGURES);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void accessEndsAtOnceAndCanBeGivenAnew(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.bea(SeriesPart.EDITOR);
            assertThat(scene.audience.catalog.open(bea.id(), Deed.WRITE)).containsExactly(scene.series);
            var pending = scene.invite(SeriesPart.OWNER);
            assertThat(scene.audience.partings.fromSeries(scene.keeper.id(), bea.id(), scene.series.id()))
                    .isTrue();
            assertThat(scene.part(bea)).isEmpty();
            assertThat(scene.audience.catalog.open(bea.id(), Deed.READ_FIGURES)).isEmpty();
            assertThat(scene.audience.invitations.find(pending.token()))
                    .as("no way around it")
                    .isEmpty();
            assertThat(scene.audience.partings.fromSeries(scene.keeper.id(), bea.id(), scene.series.id()))
                    .isFalse();
            scene.audience.invitations.accept(
                    bea.id(), scene.invite(SeriesPart.EDITOR).invitation().id());
            assertThat(scene.part(bea)).contains(SeriesPart.EDITOR);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSeriesChangesItsOwnerOnceTheOtherAccepts(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.bea(SeriesPart.EDITOR);
            var offered = scene.invite(SeriesPart.OWNER);
            assertThat(scene.part(bea)).contains(SeriesPart.EDITOR);
            assertThat(scene.audience.invitations.accept(offered.token(), "Stranger", PASSWORD))
                    .as("nobody new takes a series over")
                    .isEmpty();
            assertThat(scene.audience.invitations.accept(
                            bea.id(), offered.invitation().id()))
                    .isTrue();
            assertThat(scene.part(bea)).contains(SeriesPart.OWNER);
            assertThat(scene.part(scene.keeper)).contains(SeriesPart.EDITOR);
            assertThat(scene.audience.colleagues.of(scene.series.id()))
                    .singleElement()
                    .matches(one -> one.id().equals(scene.keeper.id()));
            assertThat(scene.record()).contains("series.handed");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void theSiteHasOneOwnerWhoHandsItOver(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.bea(SeriesPart.EDITOR);
            assertThat(scene.audience.educators.standing(scene.keeper.id())).contains(SiteStanding.OWNER);
            var offered = scene.audience.invitations.invite(scene.keeper.id(), new Offer.TheSite(), BEA, MAILED);
            assertThat(scene.audience.invitations.ofSite()).containsExactly(offered.invitation());
            assertThat(scene.audience.invitations.accept(
                            bea.id(), offered.invitation().id()))
                    .isTrue();
            assertThat(scene.audience.educators.owner()).contains(bea);
            assertThat(scene.audience.educators.standing(bea.id())).contains(SiteStanding.OWNER);
            assertThat(scene.audience.educators.standing(scene.keeper.id())).contains(SiteStanding.TEACHER);
            assertThat(scene.record()).contains("site.handed");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aDeskIsClosedOnceSomebodyTakesItsSeriesOver(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.educator("Bea", BEA.value());
            var hers = scene.audience
                    .catalog
                    .create(bea.id(), new SeriesForm("High Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
            var session = scene.audience.sessions.open(new Person.OfEducator(bea.id()), Device.COMPUTER);
            var partings = scene.audience.partings;
            assertThat(partings.fromSite(scene.keeper.id(), bea.id(), Optional.empty())
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("people.problem.heir");
            assertThat(partings.fromSite(scene.keeper.id(), bea.id(), Optional.of(bea.id()))
                            .problems())
                    .isNotEmpty();
            assertThat(partings.fromSite(scene.keeper.id(), scene.keeper.id(), Optional.of(bea.id()))
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("people.problem.owner");
            assertThat(partings.fromSite(scene.keeper.id(), bea.id(), Optional.of(scene.keeper.id()))
                            .result())
                    .isPresent();
            assertThat(scene.audience.catalog.part(scene.keeper.id(), hers.id()))
                    .contains(SeriesPart.OWNER);
            assertThat(scene.audience.sessions.find(session)).isEmpty();
            assertThat(scene.audience.educators.verify(BEA.value(), PASSWORD)).isEmpty();
            assertThat(scene.audience.educators.standing(bea.id())).isEmpty();
            assertThat(scene.audience.educators.find(bea.id()))
                    .as("the name stays")
                    .contains(bea);
            scene.audience.access.forgotten(BEA.value(), Locale.ENGLISH);
            assertThat(scene.audience.outbox.to(BEA)).isEmpty();

            var again = scene.audience.invitations.invite(scene.keeper.id(), new Offer.OwnDesk(), BEA, MAILED);
            var back = scene.audience
                    .invitations
                    .accept(again.token(), "Bea B.", PASSWORD)
                    .orElseThrow()
                    .result()
                    .orElseThrow();
            assertThat(back.id()).isEqualTo(bea.id());
            assertThat(scene.audience.educators.standing(bea.id())).contains(SiteStanding.TEACHER);
            assertThat(scene.audience.outbox.to(BEA))
                    .extracting(OutboxMail::message)
                    .hasSize(1);
        }
    }

    /** An offer is answered by whom it was made to, whatever address they or others call their own meanwhile. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoClaimsAnAddressGetsNothingThatWasOfferedToIt(Database database) {
        try (database) {
            var scene = new Scene(database);
            var invitations = scene.audience.invitations;
            var invited = scene.invite(SeriesPart.EDITOR);
            var cem = scene.claim(scene.educator("Cem", "cem@trial.example"), BEA.value());
            assertThat(invitations.to(cem.id())).isEmpty();
            assertThat(invitations.accept(cem.id(), invited.invitation().id())).isFalse();
            // also where the address was claimed before anybody was invited at it
            var later = scene.invite(SeriesPart.EDITOR);
            assertThat(invitations.to(cem.id())).isEmpty();
            assertThat(invitations.accept(cem.id(), later.invitation().id())).isFalse();
            assertThat(scene.part(cem)).isEmpty();
            assertThat(invitations.accept(cem, later.token()))
                    .as("who reads what is sent there")
                    .isTrue();
            assertThat(scene.part(cem)).contains(SeriesPart.EDITOR);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void anOfferFollowsWhomItWasMadeToAndEndsWithThem(Database database) {
        try (database) {
            var scene = new Scene(database);
            var invitations = scene.audience.invitations;
            var bea = scene.educator("Bea", BEA.value());
            var pending = scene.invite(SeriesPart.EDITOR);
            scene.claim(bea, "elsewhere@trial.example");
            assertThat(invitations.to(bea.id())).containsExactly(pending.invitation());
            var stranger =
                    invitations.accept(pending.token(), "Stranger", PASSWORD).orElseThrow();
            assertThat(stranger.problems())
                    .as("it is to somebody with a desk")
                    .extracting(FieldProblem::key)
                    .containsExactly("people.problem.known");
            scene.audience.partings.fromSeries(scene.keeper.id(), bea.id(), scene.series.id());
            scene.claim(bea, BEA.value());
            assertThat(invitations.accept(bea.id(), pending.invitation().id())).isFalse();
            assertThat(invitations.accept(bea, pending.token())).isFalse();
            assertThat(scene.part(bea)).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatSomebodyOfferedEndsWithTheirPower(Database database) {
        try (database) {
            var scene = new Scene(database);
            var audience = scene.audience;
            var bea = scene.educator("Bea", BEA.value());
            var cem = new EmailAddress("cem@trial.example");
            var hers = audience.catalog
                    .create(bea.id(), new SeriesForm("High Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
            var byBea = audience.invitations.invite(
                    bea.id(), new Offer.InSeries(hers.id(), SeriesPart.EDITOR), cem, MAILED);
            audience.partings.fromSite(scene.keeper.id(), bea.id(), Optional.of(scene.keeper.id()));
            assertThat(audience.invitations.accept(byBea.token(), "Cem", PASSWORD))
                    .as("her desk is closed")
                    .isEmpty();
            assertThat(audience.invitations.of(hers.id())).isEmpty();

            var dora = scene.educator("Dora", "dora@trial.example");
            var toSeries = audience.invitations.invite(scene.keeper.id(), scene.offer(SeriesPart.EDITOR), cem, MAILED);
            scene.acceptAt(dora, scene.offer(SeriesPart.OWNER));
            assertThat(audience.invitations.accept(toSeries.token(), "Cem", PASSWORD))
                    .as("the series is hers now")
                    .isEmpty();
            assertThat(audience.invitations.of(scene.series.id())).isEmpty();

            var toSite = audience.invitations.invite(scene.keeper.id(), new Offer.OwnDesk(), cem, MAILED);
            scene.acceptAt(dora, new Offer.TheSite());
            assertThat(audience.invitations.accept(toSite.token(), "Cem", PASSWORD))
                    .as("the site is hers now")
                    .isEmpty();
            assertThat(audience.invitations.ofSite()).isEmpty();

            audience.invitations.invite(dora.id(), new Offer.OwnDesk(), cem, MAILED);
            assertThat(Accounts.over(database.jdbi(), audience.clock).handSiteOver(scene.keeper.id()))
                    .isTrue();
            assertThat(audience.invitations.ofSite()).as("by the operator").isEmpty();
            assertThat(audience.educators.withEmail(cem.value())).isEmpty();
        }
    }

    /** As if it had been written while its writer's power ended. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyGivesWhatIsNotTheirs(Database database) {
        try (database) {
            var scene = new Scene(database);
            var audience = scene.audience;
            var bea = scene.educator("Bea", BEA.value());
            var dora = scene.educator("Dora", "dora@trial.example");
            var toDora = new EmailAddress(dora.email());
            for (Offer offer : List.of(scene.offer(SeriesPart.OWNER), new Offer.TheSite(), new Offer.OwnDesk())) {
                var invited = audience.invitations.invite(bea.id(), offer, toDora, MAILED);
                assertThat(audience.invitations.find(invited.token())).isEmpty();
                assertThat(audience.invitations.accept(
                                dora.id(), invited.invitation().id()))
                        .as(offer.word())
                        .isFalse();
            }
            assertThat(scene.part(dora)).isEmpty();
            assertThat(audience.educators.owner()).contains(scene.keeper);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoHandsSomethingOverIsTold(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.educator("Bea", BEA.value());
            var keeper = new EmailAddress(scene.keeper.email());
            scene.acceptAt(bea, scene.offer(SeriesPart.OWNER));
            assertThat(scene.audience.outbox.to(keeper))
                    .singleElement()
                    .extracting(letter -> letter.message().text())
                    .asString()
                    .contains("Keeper", "“Low Tide”", "belongs to Bea", "Quay Lessons");
            scene.acceptAt(bea, new Offer.TheSite());
            assertThat(scene.audience.outbox.to(keeper))
                    .hasSize(2)
                    .anySatisfy(letter -> assertThat(letter.message().text()).contains("Bea keeps the site"));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aClosedDeskAcceptsNothing(Database database) {
        try (database) {
            var scene = new Scene(database);
            var audience = scene.audience;
            var bea = scene.educator("Bea", BEA.value());
            var offered =
                    List.of(scene.offer(SeriesPart.OWNER), scene.offer(SeriesPart.EDITOR), new Offer.TheSite()).stream()
                            .map(offer -> audience.invitations.offer(scene.keeper.id(), offer, bea.id(), BEA, MAILED))
                            .toList();
            database.jdbi().useTransaction(handle -> audience.educators.closeDesk(handle, scene.keeper.id(), bea.id()));
            assertThat(offered).allSatisfy(one -> assertThat(audience.invitations.accept(
                            bea.id(), one.invitation().id()))
                    .isFalse());
            assertThat(Accounts.over(database.jdbi(), audience.clock).handSiteOver(bea.id()))
                    .isFalse();
            assertThat(audience.educators.owner()).contains(scene.keeper);
            assertThat(scene.part(scene.keeper)).contains(SeriesPart.OWNER);
        }
    }

    /** Whichever of the two is first, the other finds it done. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void closingADeskWhileItAcceptsLeavesNoOwnerWithoutADesk(Database database) throws Exception {
        var pool = Executors.newFixedThreadPool(2);
        try (database) {
            var scene = new Scene(database);
            var audience = scene.audience;
            for (int i = 0; i < 8; i++) {
                var bea = scene.educatorAtOnce("bea" + i + "@trial.example");
                var offer = i % 2 == 0 ? new Offer.TheSite() : scene.offer(SeriesPart.OWNER);
                var id = audience.invitations
                        .offer(scene.keeper.id(), offer, bea.id(), BEA, Optional.empty())
                        .invitation()
                        .id();
                var start = new CyclicBarrier(2);
                var accepting = pool.submit(() -> {
                    start.await();
                    return audience.invitations.accept(bea.id(), id);
                });
                var closing = pool.submit(() -> {
                    start.await();
                    return audience.partings.fromSite(scene.keeper.id(), bea.id(), Optional.empty());
                });
                boolean accepted = accepting.get();
                boolean closed = closing.get().result().isPresent();
                assertThat(accepted).as("round " + i).isNotEqualTo(closed);
                var owners = List.of(
                        audience.educators.owner().orElseThrow().id(),
                        audience.catalog.find(scene.series.id()).orElseThrow().owner());
                assertThat(owners).allSatisfy(one -> assertThat(audience.educators.standing(one))
                        .isPresent());
                database.jdbi().useTransaction(handle -> {
                    audience.educators.setOwner(handle, scene.keeper.id());
                    audience.colleagues.handOver(handle, scene.keeper.id(), scene.series.id(), scene.keeper.id());
                });
            }
        } finally {
            pool.shutdownNow();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoWritesNoMoreHasNoPrivateLinksLeft(Database database) {
        try (database) {
            var scene = new Scene(database);
            var bea = scene.bea(SeriesPart.EDITOR);
            String release = scene.release();
            var previews = scene.audience.previews;
            var hers = previews.make(bea.id(), release, "a friend", Duration.ofDays(7));
            var keepers = previews.make(scene.keeper.id(), release, "a friend", Duration.ofDays(7));
            scene.acceptAt(bea, scene.offer(SeriesPart.EDITOR));
            assertThat(previews.find(hers)).as("she writes still").isPresent();
            scene.acceptAt(bea, scene.offer(SeriesPart.READER_OF_FIGURES));
            assertThat(scene.part(bea)).contains(SeriesPart.READER_OF_FIGURES);
            assertThat(previews.find(hers)).isEmpty();
            assertThat(previews.find(keepers)).isPresent();
            scene.acceptAt(bea, scene.offer(SeriesPart.OWNER));
            assertThat(previews.find(keepers)).as("goes on as an editor").isPresent();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void onlyTheSitesOwnerLetsSomebodyBackInAndTheNameStays(Database database) {
        try (database) {
            var scene = new Scene(database);
            var audience = scene.audience;
            var bea = scene.educator("Bea", BEA.value());
            var olga = scene.educator("Olga", "olga@trial.example");
            var hers = audience.catalog
                    .create(olga.id(), new SeriesForm("High Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
            database.jdbi()
                    .useHandle(handle -> handle.execute(
                            "insert into second_factor (educator_id, secret, last_step, created_at)"
                                    + " values (?, 'JBSWY3DPEHPK3PXPJBSWY3DPEHPK3PXP', 1, current_timestamp)",
                            bea.id().value()));
            var factors = new SecondFactors(database.jdbi(), audience.audit, audience.clock);
            assertThat(factors.isOn(bea.id())).isTrue();
            audience.partings.fromSite(scene.keeper.id(), bea.id(), Optional.empty());
            assertThat(factors.isOn(bea.id()))
                    .as("the device of years ago is not asked for")
                    .isFalse();
            assertThat(scene.record()).contains("factor.off");

            var byTeacher = audience.invitations.invite(
                    olga.id(), new Offer.InSeries(hers.id(), SeriesPart.EDITOR), BEA, Optional.empty());
            assertThat(audience.invitations
                            .accept(byTeacher.token(), "Olga as Bea", PASSWORD)
                            .orElseThrow()
                            .problems())
                    .extracting(FieldProblem::key)
                    .containsExactly("people.problem.known");
            assertThat(audience.educators.standing(bea.id())).isEmpty();
            var byKeeper = audience.invitations.invite(scene.keeper.id(), new Offer.OwnDesk(), BEA, Optional.empty());
            var back = audience.invitations
                    .accept(byKeeper.token(), "Another name", PASSWORD)
                    .orElseThrow()
                    .result()
                    .orElseThrow();
            assertThat(back).isEqualTo(bea);
            assertThat(audience.educators.standing(bea.id())).contains(SiteStanding.TEACHER);
        }
    }
}
