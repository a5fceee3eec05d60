package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.SecondFactors;
import groundbass.catalog.educator.SiteStanding;
import groundbass.web.Site;
import java.time.Duration;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class SessionPrincipalsTest {
    static final Site site = Site.open();

    @AfterAll
    static void close() {
        site.close();
    }

    private final Jdbi jdbi = site.groundbass().database().jdbi();
    private final Audit audit = new Audit(jdbi, site.clock());
    private final PrincipalResolver principals = new SessionPrincipals(
            Parts.sessions(jdbi, site.clock()),
            new Educators(jdbi, audit, site.clock()),
            new SecondFactors(jdbi, audit, site.clock()).demand());

    @Test
    void aTokenNamesWhoSignedInUntilTheSessionEnds() {
        var token = Optional.of(site.atTheDesk().getValue());
        assertThat(principals.of(token)).isEqualTo(Principal.of(site.educator(), SiteStanding.OWNER));
        site.clock().advance(Duration.ofDays(8));
        assertThat(principals.of(token)).isEqualTo(Principal.UNKNOWN);
    }

    @Test
    void anInventedTokenNamesNobody() {
        assertThat(principals.of(Optional.of("x".repeat(43)))).isEqualTo(Principal.UNKNOWN);
        assertThat(principals.of(Optional.empty())).isEqualTo(Principal.UNKNOWN);
    }
}
