package groundbass.audience.colleague;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.student.Device;
import groundbass.audience.student.Person;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.SiteStanding;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesPart;
import groundbass.form.FieldProblem;
import groundbass.post.EmailAddress;
import groundbass.post.OutboxMail;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** Ours, all of it: what the desk's pages promise of invitations and their ends. */
class InvitationsTest {
    private static final String PASSWORD = "quartz lantern boat seven";
    private static final EmailAddress BEA = new EmailAddress("bea@trial.example");
    private static final Optional<Locale> MAILED = Optional.of(Locale.ENGLISH);

    /** A site with its keeper, who owns one series. */
    private static final class Scene {
        final Audience audience;
        final Educator keeper;
        final Series series;

        Scene(Database database) {
            audience = new Audience(database);
            keeper = educator("Keeper", "keeper@trial.example");
            series = audience.catalog
                    .create(keeper.id(), new SeriesForm("Low Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
        }

        Educator educator(String name, String email) {
            audience.clock.advance(Duration.ofSeconds(1));
            return audience.educators.create(name, email, PASSWORD).result().orElseThrow();
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
                            cem, invited.invitation().id()))
                    .isFalse();
            assertThat(scene.audience.invitations.decline(cem, invited.invitation()))
                    .isFalse();
            assertThat(scene.audience.invitations.to(cem)).isEmpty();
            assertThat(scene.audience.invitations.to(bea)).containsExactly(invited.invitation());
            assertThat(scene.audience.invitations.accept(
                            bea, invited.invitation().id()))
                    .isTrue();
            assertThat(scene.part(bea)).contains(SeriesPart.READER_OF_FIGURES);
            assertThat(scene.audience.educators.find(bea.id()).orElseThrow().name())
                    .isEqualTo("Bea");
            assertThat(scene.audience.educators.standing(bea.id())).contains(SiteStanding.TEACHER);

            var other = scene.invite(SeriesPart.EDITOR);
            assertThat(scene.audience.invitations.decline(bea, other.invitation()))
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
                    bea, scene.invite(SeriesPart.EDITOR).invitation().id());
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
                            bea, offered.invitation().id()))
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
                            bea, offered.invitation().id()))
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
}
