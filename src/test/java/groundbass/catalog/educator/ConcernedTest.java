package groundbass.catalog.educator;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** What an educator reads in the record who does not keep the site. Ours. */
class ConcernedTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatSomebodyDidWhatWasDoneToThemAndWhatWentOut(Database database) {
        try (database) {
            var audit = new Audit(database.jdbi(), SettableClock.at("2026-03-02T10:00:00Z"));
            var bea = EducatorId.next();
            var cem = EducatorId.next();
            audit.note(bea.value(), AuditWord.SERIES_CREATED, "series0000000001");
            audit.note(cem.value(), AuditWord.COLLEAGUE_ENDED, "series0000000001 " + bea);
            audit.note(Audit.CALENDAR, AuditWord.RELEASE_PUBLISHED, "release000000001");
            audit.note(cem.value(), AuditWord.DRAFT_DELETED, "A title that ends in " + bea);
            audit.note(cem.value(), AuditWord.COLLEAGUE_ENDED, "series0000000001 " + cem);
            audit.note(Audit.CALENDAR, AuditWord.DRAFT_PURGED, "episode000000001");
            assertThat(audit.concerning(bea, 0, 10))
                    .extracting(AuditEntry::what)
                    .containsExactly("release.published", "colleague.ended", "series.created");
        }
    }
}
