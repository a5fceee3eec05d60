package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.audience.student.Person;
import groundbass.web.Site;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class SessionPrincipalsTest {
    static final Site site = Site.open();

    @AfterAll
    static void close() {
        site.close();
    }

    private final PrincipalResolver principals =
            new SessionPrincipals(Parts.sessions(site.groundbass().database().jdbi(), site.clock()));

    @Test
    void aTokenNamesWhoSignedInUntilTheSessionEnds() {
        var token = Optional.of(site.atTheDesk().getValue());
        assertThat(principals.of(token)).isEqualTo(Principal.of(new Person.OfEducator(site.educator())));
        site.clock().advance(Duration.ofDays(8));
        assertThat(principals.of(token)).isEqualTo(Principal.UNKNOWN);
    }

    @Test
    void anInventedTokenNamesNobody() {
        assertThat(principals.of(Optional.of("x".repeat(43)))).isEqualTo(Principal.UNKNOWN);
        assertThat(principals.of(Optional.empty())).isEqualTo(Principal.UNKNOWN);
    }
}
