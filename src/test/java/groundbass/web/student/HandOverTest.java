package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.DownloadState;
import groundbass.audience.statistics.Statistics;
import groundbass.web.Site;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

/** Behind a front server that sends files itself, told by X-Accel-Redirect (its manual; the name is its own). */
class HandOverTest {
    static final Site site = Site.open(config -> config.handingOverAt("/kept/"));
    static final Shelf shelf = Shelf.fill(site);

    @AfterAll
    static void close() {
        site.close();
    }

    @Test
    void theFrontServerIsToldWhereTheFileLiesAndTheRecordSaysSo() {
        var answer = site.program().get(shelf.file(1, "sheet.pdf"));
        String place = answer.header("X-Accel-Redirect");
        assertThat(place).startsWith("/kept/");
        assertThat(site.data().resolve(place.substring("/kept/".length()))).isRegularFile();
        assertThat(answer.asByteArray()).isEmpty();
        assertThat(answer.header("Content-Disposition")).contains("first-plank-sheet.pdf");
        var taken = new Statistics(site.groundbass().database().jdbi())
                .latest(shelf.episode(1).id(), 10);
        assertThat(taken).hasSize(1);
        assertThat(taken.get(0).download().state()).isEqualTo(DownloadState.HANDED_OVER);
    }
}
