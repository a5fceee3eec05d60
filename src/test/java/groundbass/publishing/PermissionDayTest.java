package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.series.SeriesForm;
import groundbass.document.Clearance;
import groundbass.document.Licence;
import groundbass.document.Rights;
import groundbass.store.BothDatabases;
import org.junit.jupiter.api.Test;

class PermissionDayTest {
    /** Nine in the evening in New York is two in the morning of the next day by UTC (IANA time zone database, EST = UTC-5). */
    @Test
    void theLastDayIsOneWhereTheSeriesIsAtHome() {
        try (var database = BothDatabases.freshH2()) {
            var studio = new Studio(database);
            done(studio.catalog.create(studio.educator, new SeriesForm("Harbour", "", "Grooves.", "America/New_York")));
            var id = studio.episode("Rope and Pulley");
            studio.clock.set("2026-03-06T02:00:00Z");
            var lastEvening = new Licence("No. 12", "A publisher", "2026-03-05");
            studio.change(id, edit -> edit.rights(new Rights("", "", "Given.", Clearance.GIVEN, lastEvening)));
            done(studio.bringOut(id));
            studio.buildAll();
            studio.publicationJob.pass();
            assertThat(studio.find(id).isPublished()).isTrue();
        }
    }
}
