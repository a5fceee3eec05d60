package groundbass.archive;

import groundbass.archive.file.DamagedFile;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/** A folder that somebody wrote, on its way in: its lessons come as drafts. */
final class WrittenRun {
    private final Arrival arrival;

    WrittenRun(Arrival arrival) {
        this.arrival = arrival;
    }

    Outcome<BroughtIn> bringIn() throws DamagedFile {
        var read = WrittenSeries.read(arrival.texts, arrival.source);
        arrival.demandFewLessons(read.lessons().size());
        arrival.findings.addAll(read.findings());
        arrival.damaged += read.findings().size();
        var form = arrival.named(read.form());
        var here = Slug.parse(form.slug().strip()).flatMap(arrival.parts.catalog()::find);
        var series = here.filter(one -> one.owner().equals(arrival.owner))
                .map(Outcome::done)
                .orElseGet(() -> arrival.asked(arrival.parts.catalog().create(arrival.owner, form)));
        series.result().ifPresent(one -> read.lessons().forEach(lesson -> write(one, lesson)));
        return series.result().isPresent()
                ? Outcome.done(arrival.brought(series.result().get()))
                : Outcome.refused(series.problems());
    }

    private void write(Series series, WrittenSeries.Lesson lesson) {
        if (arrival.parts.episodes().find(series.slug(), lesson.number()).isPresent()) {
            arrival.already++;
            return;
        }
        var made = create(series, lesson);
        arrival.tell(lesson.folder(), made);
        made.result()
                .filter(one -> one.number() != lesson.number())
                .ifPresent(one -> arrival.tell(
                        lesson.folder(), arrival.parts.desk().move(arrival.owner, one.id(), lesson.number())));
        arrival.came += made.result().isPresent() ? 1 : 0;
        arrival.damaged += made.result().isPresent() ? 0 : 1;
    }

    private Outcome<Episode> create(Series series, WrittenSeries.Lesson lesson) {
        try {
            return arrival.parts.desk().create(arrival.owner, series.id(), lesson.document());
        } catch (UnableToExecuteStatementException e) {
            return Outcome.refused(ArchiveImport.FILE, RowFault.key(e));
        }
    }
}
