package groundbass.archive;

import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.Entry;
import groundbass.archive.file.Json;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.series.Series;
import groundbass.identity.Sha256;
import groundbass.store.Blobs;
import groundbass.store.fault.DamagedFileException;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * Writes a series into a zip, lesson by lesson: one lesson's texts are in memory at a time, and no stored file is. Each
 * lesson is as it stands at the moment in which its turn comes.
 */
public final class SeriesExport {
    private final ArchiveParts parts;

    public SeriesExport(ArchiveParts parts) {
        this.parts = parts;
    }

    /**
     * What was written.
     *
     * @param missing files that the site has lost, by their names in the archive
     */
    public record Written(int lessons, long files, List<String> missing) {
        public Written {
            missing = List.copyOf(missing);
        }
    }

    /** Writes the archive and leaves the stream open. A stream that breaks off leaves a file without its manifest. */
    public Written writeTo(Series series, OutputStream out) throws IOException {
        var zip = new Zip(out, parts.clock().instant());
        var manifest = write(series, zip);
        zip.finish();
        return new Written(manifest.lessons().size(), zip.files, manifest.missing());
    }

    private ArchiveManifest write(Series series, Zip zip) throws IOException {
        var files = new ArrayList<Entry>();
        for (var file : seriesTexts(series).entrySet()) {
            zip.text(file.getKey(), file.getValue());
            files.add(Entry.of(file.getKey(), file.getValue()));
        }
        var lessons = new ArrayList<ArchiveManifest.LessonPart>();
        var missing = new ArrayList<String>();
        var reader = new LessonReader(parts, series.owner());
        var listed = parts.episodes().in(series.id(), 0, EpisodeService.HIGHEST_NUMBER);
        int highest = listed.stream().mapToInt(Episode::number).max().orElse(0);
        String form = "%0" + Math.max(2, Integer.toString(highest).length()) + "d-%s";
        for (var lesson : listed) {
            String folder = form.formatted(lesson.number(), lesson.slug());
            lessons.add(write(reader.read(folder, lesson), zip, missing));
        }
        var manifest = new ArchiveManifest(
                ArchiveManifest.FORMAT,
                zip.made.toString(),
                new ArchiveManifest.SeriesPart(
                        series.id().value(), series.createdAt().toString()),
                files,
                lessons,
                missing);
        zip.text(ArchiveNames.MANIFEST, Json.write(manifest));
        return manifest;
    }

    private Map<String, String> seriesTexts(Series series) {
        var facts = SeriesFacts.of(
                series,
                parts.styles().of(series.id()),
                parts.rhythms().of(series.id()),
                parts.outlooks().of(series.id()),
                parts.news().of(series.id()));
        var texts = new LinkedHashMap<String, String>();
        texts.put(ArchiveNames.READ_ME, ArchiveReadMe.TEXT);
        texts.put(ArchiveNames.SERIES, facts.facts().text());
        parts.beginnings().of(series.id()).ifPresent(document -> DocumentFiles.write(document)
                .forEach((name, text) -> texts.put(ArchiveNames.BEGINNING + name, text)));
        return texts;
    }

    private ArchiveManifest.LessonPart write(LessonContent content, Zip zip, List<String> missing) throws IOException {
        String place = content.folder() + "/";
        String list = Json.write(content.part());
        zip.text(place + ArchiveNames.LESSON, list);
        for (var text : content.texts().entrySet()) {
            zip.text(place + text.getKey(), text.getValue());
        }
        for (var file : content.stored().entrySet()) {
            if (!zip.stored(place + file.getKey(), parts.blobs(), file.getValue())) {
                missing.add(place + file.getKey());
            }
        }
        var part = content.part();
        return new ArchiveManifest.LessonPart(
                content.folder(),
                part.id(),
                part.number(),
                part.shown().title(),
                Entry.of(place + ArchiveNames.LESSON, list));
    }

    /** A zip that is being written, all of whose entries are of one moment. */
    private static final class Zip {
        private final ZipOutputStream out;
        private final Instant made;
        private final LocalDateTime shown;
        private long files;

        Zip(OutputStream out, Instant made) {
            this.out = new ZipOutputStream(out, StandardCharsets.UTF_8);
            this.made = made;
            this.shown = LocalDateTime.ofInstant(made, ZoneOffset.UTC);
        }

        void text(String name, String text) throws IOException {
            out.setLevel(Deflater.DEFAULT_COMPRESSION);
            begin(name);
            out.write(text.getBytes(StandardCharsets.UTF_8));
            out.closeEntry();
        }

        /** @return false where the site has lost the file */
        boolean stored(String name, Blobs blobs, Sha256 sha256) throws IOException {
            try (var in = blobs.open(sha256)) {
                out.setLevel(Deflater.NO_COMPRESSION); // sheets and sounds are as small as they get
                begin(name);
                in.transferTo(out);
                out.closeEntry();
                return true;
            } catch (NoSuchFileException | DamagedFileException e) {
                return false;
            }
        }

        private void begin(String name) throws IOException {
            var entry = new ZipEntry(name);
            entry.setTimeLocal(shown);
            out.putNextEntry(entry);
            files++;
        }

        void finish() throws IOException {
            out.finish();
            out.flush();
        }
    }
}
