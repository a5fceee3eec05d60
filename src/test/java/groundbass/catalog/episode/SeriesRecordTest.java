package groundbass.catalog.episode;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.Level;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class SeriesRecordTest {
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatBeginsWithAnIdOfTheSeriesBelongsToIt(Database database) {
        try (database) {
            var jdbi = database.jdbi();
            var clock = SettableClock.at("2026-03-02T09:00:00Z");
            var audit = new Audit(jdbi, clock);
            var who = new Educators(jdbi, audit, clock)
                    .create("Olga Owner", "olga@trial.example", "quartz lantern boat seven")
                    .result()
                    .orElseThrow()
                    .id();
            var catalog = new SeriesCatalog(jdbi, audit, clock);
            var tide = catalog.create(who, new SeriesForm("Low Tide", "", "", "Europe/Vienna"))
                    .result()
                    .orElseThrow();
            catalog.create(who, new SeriesForm("Harbour", "", "", "Europe/Vienna"));
            var lesson = Parts.over(jdbi, clock)
                    .desk()
                    .create(who, tide.id(), "Sluice Gate", Level.BEGINNER)
                    .result()
                    .orElseThrow();
            audit.note(who.value(), AuditWord.UPLOAD_CREATED, "sent0000000000ab for episode " + lesson.id());
            audit.note(who.value(), AuditWord.PICTURE_REMOVED, "sent0000000000cd of episode " + lesson.id());
            audit.note(who.value(), AuditWord.EPISODE_MOVED, "of another " + lesson.id());
            audit.note(who.value(), AuditWord.COLLEAGUE_ENDED, tide.id() + " " + who);
            var record = new SeriesRecord(jdbi);
            assertThat(record.of(tide.id(), 0, 10))
                    .extracting(AuditEntry::what)
                    .containsExactly(
                            "colleague.ended",
                            "picture.removed",
                            "upload.created",
                            "episode.created",
                            "series.created");
            assertThat(record.of(tide.id(), 2, 2))
                    .extracting(AuditEntry::what)
                    .containsExactly("upload.created", "episode.created");
            assertThat(record.titles(tide.id(), List.of(lesson.id().value(), who.value())))
                    .isEqualTo(Map.of(lesson.id().value(), "Sluice Gate"));
        }
    }
}
