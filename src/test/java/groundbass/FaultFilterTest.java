package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import ch.qos.logback.classic.Level;
import ch.qos.logback.classic.Logger;
import ch.qos.logback.classic.LoggerContext;
import ch.qos.logback.classic.spi.LoggingEvent;
import ch.qos.logback.core.spi.FilterReply;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class FaultFilterTest {
    private static final long MINUTE = 60_000;

    private final FaultFilter filter = new FaultFilter();
    private final Logger logger = new LoggerContext().getLogger("trial");
    private final IllegalStateException fault = new IllegalStateException("a string broke");

    @Test
    void ofOneFaultThatComesAgainOnlyTheFirstInAMinuteIsWrittenWhole() {
        var replies = new ArrayList<FilterReply>();
        for (long at = 0; at < MINUTE; at += MINUTE / 100) {
            replies.add(decide("fault {} at {}", "id" + at, at));
        }
        assertThat(replies).hasSize(100).startsWith(FilterReply.NEUTRAL);
        assertThat(replies.subList(1, 100)).containsOnly(FilterReply.DENY);
        assertThat(decide("fault {} at {}", "later", MINUTE)).isEqualTo(FilterReply.NEUTRAL);
    }

    @Test
    void aClockThatIsSetBackDoesNotSilenceIt() {
        decide("fault", "", 10 * MINUTE);
        assertThat(decide("fault", "", 0)).isEqualTo(FilterReply.NEUTRAL);
    }

    @Test
    void differentFaultsAreToldApart() {
        decide("fault", "", 0);
        assertThat(decide("another", "", 1)).isEqualTo(FilterReply.NEUTRAL);
        var elsewhere =
                new LoggingEvent("", logger, Level.ERROR, "fault", new IllegalArgumentException(), new Object[0]);
        elsewhere.setTimeStamp(2);
        assertThat(filter.decide(elsewhere)).isEqualTo(FilterReply.NEUTRAL);
    }

    @Test
    void whatIsNoFaultPassesAsOftenAsItComes() {
        var event = new LoggingEvent("", logger, Level.WARN, "taken", null, new Object[0]);
        assertThat(List.of(filter.decide(event), filter.decide(event))).containsOnly(FilterReply.NEUTRAL);
    }

    private FilterReply decide(String message, String argument, long at) {
        var event = new LoggingEvent("", logger, Level.ERROR, message, fault, new Object[] {argument, at});
        event.setTimeStamp(at);
        return filter.decide(event);
    }
}
