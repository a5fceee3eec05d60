package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.student.Person;
import groundbass.audience.student.Sessions;
import groundbass.web.Site;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class SignedInVisitorsTest {
    static final Site site = Site.open();

    @AfterAll
    static void close() {
        site.close();
    }

    private final Visitors visitors =
            new SignedInVisitors(new Sessions(site.groundbass().database().jdbi(), site.clock()));

    @Test
    void aTokenNamesWhoSignedInUntilTheSessionEnds() {
        var token = Optional.of(site.atTheDesk().getValue());
        assertThat(visitors.of(token)).isEqualTo(Visitor.of(new Person.OfEducator(site.educator())));
        site.clock().advance(Duration.ofDays(8));
        assertThat(visitors.of(token)).isEqualTo(Visitor.UNKNOWN);
    }

    @Test
    void anInventedTokenNamesNobody() {
        assertThat(visitors.of(Optional.of("x".repeat(43)))).isEqualTo(Visitor.UNKNOWN);
        assertThat(visitors.of(Optional.empty())).isEqualTo(Visitor.UNKNOWN);
    }
}
