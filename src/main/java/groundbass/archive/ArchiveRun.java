package groundbass.archive;

import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Entry;
import groundbass.archive.file.Facts;
import groundbass.archive.file.Json;
import groundbass.archive.file.JsonMoments;
import groundbass.archive.file.LaterFormat;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesId;
import groundbass.document.HouseStyle;
import groundbass.document.UploadId;
import groundbass.form.Outcome;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/** One archive on its way in. */
final class ArchiveRun {
    private final Arrival arrival;

    ArchiveRun(Arrival arrival) {
        this.arrival = arrival;
    }

    /** @param length of its list, in characters: it has at least as many bytes */
    private record Listed(String folder, LessonPart part, int length) {}

    /** @param most bytes that it may have */
    Outcome<BroughtIn> bringIn(long most) throws DamagedFile, IOException {
        var manifest = manifest();
        var facts = SeriesFacts.read(promised(manifest));
        var lessons = lessons(manifest, new ImportBounds(arrival.limits, most));
        var id = seriesId(manifest, lessons);
        boolean out = lessons.stream()
                .anyMatch(lesson -> lesson.part().published() != null
                        && !lesson.part().releases().isEmpty());
        if (out && !arrival.parts.settings().current().imprint().isComplete()) {
            return Outcome.refused(ArchiveImport.FILE, "archive.problem.imprint");
        }
        var series = series(id, manifest, facts);
        return series.result().isPresent()
                ? Outcome.done(bringIn(series.result().get(), lessons))
                : Outcome.refused(series.problems());
    }

    /** Empty where it is gone or damaged: each lesson has a list of its own. */
    private Optional<ArchiveManifest> manifest() throws DamagedFile {
        try {
            var manifest = arrival.texts.find(ArchiveNames.MANIFEST, Json.LONGEST);
            if (manifest.isEmpty()) {
                arrival.findings.add(ArchiveRemark.of(ArchiveNames.MANIFEST, "archive.no-manifest"));
                return Optional.empty();
            }
            var read = Json.read(manifest.get(), ArchiveManifest.class);
            demandKnown(read.format());
            read.missing().forEach(file -> arrival.findings.add(ArchiveRemark.of(file, "archive.was-lost")));
            return Optional.of(read);
        } catch (LaterFormat e) {
            throw e;
        } catch (DamagedFile e) {
            arrival.findings.add(ArchiveRemark.of(ArchiveNames.MANIFEST, "archive.no-manifest"));
            return Optional.empty();
        }
    }

    private void demandKnown(int format) throws DamagedFile {
        if (format > ArchiveManifest.FORMAT) {
            throw new LaterFormat();
        }
    }

    /** What the series says of itself, though it was changed since: it is looked over at the desk. */
    private Facts promised(Optional<ArchiveManifest> manifest) throws DamagedFile {
        var facts = WrittenSeries.seriesFacts(arrival.texts);
        for (var entry : manifest.map(ArchiveManifest::files).orElse(List.of())) {
            if (entry.name().equals(ArchiveNames.SERIES)) {
                try {
                    arrival.texts.find(ArchiveNames.SERIES, entry, ArchiveLimits.LONGEST_TEXT);
                } catch (DamagedFile e) {
                    arrival.findings.add(ArchiveRemark.of(ArchiveNames.SERIES, "archive.series-changed"));
                }
            }
        }
        return facts;
    }

    private List<Listed> lessons(Optional<ArchiveManifest> manifest, ImportBounds bounds) throws DamagedFile {
        var folders = new TreeSet<>(ArchiveNames.BY_NUMBER);
        var promised = manifest.map(ArchiveManifest::lessons).orElse(List.of());
        promised.forEach(lesson -> folders.add(lesson.folder()));
        arrival.source.names().stream()
                .filter(name -> name.endsWith("/" + ArchiveNames.LESSON))
                .map(name -> name.substring(0, name.length() - ArchiveNames.LESSON.length() - 1))
                .filter(folder -> folder.indexOf('/') < 0)
                .forEach(folders::add);
        arrival.demandFewLessons(folders.size());
        var lists = new ArrayList<Listed>();
        for (String folder : folders) {
            var entry = promised.stream()
                    .filter(lesson -> folder.equals(lesson.folder()))
                    .map(ArchiveManifest.LessonPart::list)
                    .findFirst();
            var listed = list(folder, entry);
            if (listed.isPresent()) {
                bounds.take(listed.get().part(), listed.get().length());
                lists.add(listed.get());
            }
        }
        return lists;
    }

    private Optional<Listed> list(String folder, Optional<Entry> promised) throws DamagedFile {
        String name = folder + "/" + ArchiveNames.LESSON;
        try {
            String text = promised.isPresent()
                    ? arrival.texts.find(name, promised.get(), Json.LONGEST)
                    : arrival.texts.find(name, Json.LONGEST).orElse("");
            var part = Json.read(text, LessonPart.class);
            demandKnown(part.format());
            return Optional.of(new Listed(folder, part, text.length()));
        } catch (LaterFormat e) {
            throw e;
        } catch (DamagedFile e) {
            arrival.findings.add(e.finding(name));
            arrival.damaged++;
            return Optional.empty();
        }
    }

    private SeriesId seriesId(Optional<ArchiveManifest> manifest, List<Listed> lessons) throws DamagedFile {
        var named = Stream.concat(
                manifest.map(one -> one.series().id()).stream(),
                lessons.stream().map(lesson -> lesson.part().series()));
        return named.filter(text -> text != null)
                .findFirst()
                .flatMap(SeriesId::parse)
                .orElseThrow(() -> DamagedFile.of("archive.problem.none"));
    }

    /** The one that is here, else a new one with what it had beside its lessons. */
    private Outcome<Series> series(SeriesId id, Optional<ArchiveManifest> manifest, SeriesFacts facts)
            throws DamagedFile {
        var here = arrival.parts.catalog().find(id);
        if (here.isPresent()) {
            return here.filter(series -> series.owner().equals(arrival.owner))
                    .map(Outcome::done)
                    .orElseGet(() -> Outcome.refused(ArchiveImport.FILE, "archive.problem.elsewhere"));
        }
        Instant created = manifest.isPresent()
                ? JsonMoments.read(manifest.get().series().created())
                : arrival.parts.clock().instant();
        return arrival.parts.jdbi().inTransaction(handle -> {
            var made = arrival.parts.catalog().bringIn(arrival.owner, id, arrival.named(facts.form()), created);
            made.result().ifPresent(series -> settings(series, facts));
            return arrival.asked(made);
        });
    }

    private void settings(Series series, SeriesFacts facts) {
        if (!facts.style().equals(HouseStyle.USUAL)) {
            arrival.parts.styles().save(arrival.owner, series.id(), facts.style());
        }
        if (!facts.rhythm().first().isBlank()) {
            arrival.tell(ArchiveNames.SERIES, arrival.parts.rhythms().save(arrival.owner, series.id(), facts.rhythm()));
        }
        arrival.parts.outlooks().save(arrival.owner, series.id(), facts.outlook());
        if (!facts.news().subject().isBlank() || !facts.news().opening().isBlank()) {
            arrival.tell(ArchiveNames.SERIES, arrival.parts.news().save(arrival.owner, series.id(), facts.news()));
        }
        if (arrival.texts.has(ArchiveNames.BEGINNING + DocumentFiles.FACTS)) {
            try {
                var document = DocumentFiles.read(name -> arrival.texts.find(ArchiveNames.BEGINNING + name), "");
                arrival.tell(
                        ArchiveNames.SERIES, arrival.parts.beginnings().save(arrival.owner, series.id(), document));
            } catch (DamagedFile e) {
                arrival.findings.add(e.finding(ArchiveNames.BEGINNING));
            }
        }
    }

    private BroughtIn bringIn(Series series, List<Listed> lessons) throws IOException {
        var lesson = new LessonImport(
                arrival.parts, arrival.texts, arrival.owner, series, recordings(lessons), arrival.findings);
        for (var listed : lessons) {
            if (!series.id().value().equals(listed.part().series())) {
                arrival.findings.add(ArchiveRemark.of(listed.folder(), "archive.problem.other-series"));
                arrival.damaged++;
                continue;
            }
            switch (lesson.bringIn(listed.folder(), listed.part())) {
                case IN -> arrival.came++;
                case ALREADY -> arrival.already++;
                case LEFT -> arrival.damaged++;
            }
        }
        return arrival.brought(series);
    }

    private Set<UploadId> recordings(List<Listed> lessons) {
        var ids = new HashSet<UploadId>();
        lessons.forEach(
                lesson -> lesson.part().recordings().forEach(recording -> UploadId.parse(String.valueOf(recording.id()))
                        .ifPresent(ids::add)));
        return ids;
    }
}
