package groundbass.audience.download;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.Visits.Visit;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class VisitsTest {
    private static final Instant NOW = Instant.parse("2026-03-02T10:00:00Z");
    private static final Instant YESTERDAY = NOW.minus(Duration.ofDays(1));

    private final Visits visits = new Visits();

    @Test
    void theNewestDownloadOfAFileIsFound() {
        DownloadId first = DownloadId.next(NOW);
        DownloadId second = DownloadId.next(NOW);
        visits.remember(visit(1), first, NOW);
        visits.remember(visit(1), second, NOW);
        assertThat(visits.latest(visit(1), YESTERDAY)).contains(second);
        assertThat(visits.latest(visit(2), YESTERDAY)).isEmpty();
        assertThat(visits.latest(new Visit("digest 1", "release", "line.mid"), YESTERDAY))
                .isEmpty();
    }

    @Test
    void whatIsADayOldIsFoundNoMoreAndThenForgotten() {
        visits.remember(visit(1), DownloadId.next(YESTERDAY), YESTERDAY);
        visits.remember(visit(2), DownloadId.next(NOW), NOW);
        assertThat(visits.latest(visit(1), YESTERDAY)).isEmpty();
        visits.forget(YESTERDAY);
        assertThat(visits.latest(visit(1), Instant.EPOCH)).isEmpty();
        assertThat(visits.latest(visit(2), Instant.EPOCH)).isPresent();
    }

    @Test
    void ofTooManyTheOldestIsForgotten() {
        DownloadId id = DownloadId.next(NOW);
        for (int i = 0; i < Visits.MOST; i++) visits.remember(visit(i), id, NOW);
        visits.remember(visit(0), id, NOW);
        visits.remember(visit(-1), id, NOW);
        assertThat(visits.latest(visit(1), YESTERDAY)).isEmpty();
        assertThat(visits.latest(visit(0), YESTERDAY)).isPresent();
        assertThat(visits.latest(visit(2), YESTERDAY)).isPresent();
    }

    private static Visit visit(int number) {
        return new Visit("digest " + number, "release", "sheet.pdf");
    }
}
