package groundbass.archive;

import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Entry;
import groundbass.archive.file.Json;
import groundbass.archive.file.JsonMoments;
import groundbass.archive.file.SourceInput;
import groundbass.archive.file.Texts;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.PictureFormat;
import groundbass.catalog.upload.Pictures;
import groundbass.catalog.upload.Upload;
import groundbass.document.PictureId;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.identity.Sha256;
import groundbass.store.Blob;
import groundbass.text.Message;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The folder of a lesson in an archive, read against its list: texts are held, stored files are kept among the site's
 * own, where the sweep takes them away again if no row names them in the end. Everything that is wrong is found, not only
 * the first.
 */
final class LessonFolder {
    private final ArchiveParts parts;
    private final Texts reader;
    private final String place;
    private final LessonPart part;
    private final Map<String, Entry> entries = new HashMap<>();
    private final Map<String, String> texts = new HashMap<>();
    private final Map<String, Blob> stored = new HashMap<>();
    private final Map<UploadId, Upload> recordings = new LinkedHashMap<>();
    private final List<Picture> pictures = new ArrayList<>();
    private final List<ArchiveRemark> findings = new ArrayList<>();

    LessonFolder(ArchiveParts parts, Texts reader, String folder, LessonPart part) {
        this.parts = parts;
        this.reader = reader;
        this.place = folder + "/";
        this.part = part;
        part.files().forEach(entry -> entries.put(entry.name(), entry));
    }

    /** Reads all of it. @return what is wrong; nothing of the lesson may come in then */
    List<ArchiveRemark> read(EducatorId owner, EpisodeId id) throws IOException {
        var files = storedNames();
        long ofTexts = part.files().stream()
                .filter(entry -> !files.contains(entry.name()))
                .mapToLong(Entry::size)
                .sum();
        if (ofTexts > ArchiveLimits.TEXTS_OF_A_LESSON) {
            return List.of(ArchiveRemark.of(place, "archive.problem.long", ArchiveLimits.TEXTS_OF_A_LESSON));
        }
        var sent = new HashSet<String>();
        for (var recording : part.recordings()) {
            read(recording, owner, id);
            sent.add(recording.file());
        }
        for (var picture : part.pictures()) {
            read(picture, owner, id);
            sent.add(picture.file());
        }
        for (var entry : part.files()) {
            if (!files.contains(entry.name())) {
                text(entry);
            } else if (!sent.contains(entry.name())) {
                keep(entry);
            }
        }
        return List.copyOf(findings);
    }

    private Set<String> storedNames() {
        var names = new HashSet<String>();
        part.recordings().forEach(recording -> names.add(recording.file()));
        part.pictures().forEach(picture -> names.add(picture.file()));
        part.releases().forEach(release -> release.files().forEach(file -> names.add(file.file())));
        return names;
    }

    private void text(Entry entry) {
        try {
            int most = entry.name().endsWith(".json") ? Json.LONGEST : ArchiveLimits.LONGEST_TEXT;
            texts.put(entry.name(), reader.find(place + entry.name(), entry, most));
        } catch (DamagedFile e) {
            findings.add(e.finding(place));
        }
    }

    private void read(LessonPart.RecordingPart recording, EducatorId owner, EpisodeId lesson) throws IOException {
        var entry = entries.get(recording.file());
        var id = UploadId.parse(recording.id());
        if (entry == null || id.isEmpty()) {
            found(recording.file(), "archive.problem.json");
            return;
        }
        try (var in = reader.open(place + entry.name())) {
            var judged = parts.uploads()
                    .judge(owner, lesson, id.get(), recording.name(), JsonMoments.read(recording.created()), in);
            judged.problems().forEach(problem -> found(entry, problem));
            if (judged.result().isPresent()) {
                keep(entry, judged.result().map(Upload::blob));
                recordings.put(id.get(), judged.result().get());
            }
        } catch (DamagedFile e) {
            findings.add(e.finding(place + entry.name()));
        } catch (SourceInput.Damaged e) {
            found(entry.name(), "archive.problem.damaged");
        }
    }

    private void read(LessonPart.PicturePart part, EducatorId owner, EpisodeId lesson) throws IOException {
        var entry = entries.get(part.file());
        if (entry == null) {
            found(part.file(), "archive.problem.json");
            return;
        }
        try (var in = reader.open(place + entry.name())) {
            var told = told(part, entry, owner, lesson).orElseThrow(() -> DamagedFile.of("archive.problem.json"));
            var judged = parts.uploads().pictures().judge(told, in);
            judged.problems().forEach(problem -> found(entry, problem));
            if (judged.result().isPresent()) {
                keep(entry, judged.result().map(Picture::blob));
                pictures.add(judged.result().get());
            }
        } catch (DamagedFile e) {
            findings.add(e.finding(place + entry.name()));
        } catch (SourceInput.Damaged e) {
            found(entry.name(), "archive.problem.damaged");
        }
    }

    /** Empty where a value is none that a picture of ours has. */
    private static Optional<Picture> told(LessonPart.PicturePart part, Entry entry, EducatorId owner, EpisodeId lesson)
            throws DamagedFile {
        var format = Stream.of(PictureFormat.values())
                .filter(one -> one.value().equals(part.format()))
                .findFirst();
        var id = PictureId.parse(part.id());
        boolean sound = format.isPresent() && id.isPresent() && Pictures.isSound(part.words());
        return sound
                ? Optional.of(new Picture(
                        id.get(),
                        owner,
                        lesson,
                        part.name(),
                        part.words(),
                        format.get(),
                        part.wide(),
                        part.high(),
                        new Blob(new Sha256(entry.sha256()), entry.size()),
                        JsonMoments.read(part.created())))
                : Optional.empty();
    }

    private void found(Entry entry, FieldProblem problem) {
        findings.add(new ArchiveRemark(place + entry.name(), new Message(problem.key(), problem.args())));
    }

    private void found(String name, String key) {
        findings.add(ArchiveRemark.of(place + name, key));
    }

    private void keep(Entry entry) throws IOException {
        try (var in = reader.open(place + entry.name())) {
            keep(entry, parts.blobs().put(in, entry.size()));
        } catch (DamagedFile e) {
            findings.add(e.finding(place + entry.name()));
        } catch (SourceInput.Damaged e) {
            found(entry.name(), "archive.problem.damaged");
        }
    }

    /** @param read empty where it is longer than its list says */
    private void keep(Entry entry, Optional<Blob> read) {
        read.filter(blob -> isPromised(entry, blob))
                .ifPresentOrElse(
                        blob -> stored.put(entry.name(), blob), () -> found(entry.name(), "archive.problem.changed"));
    }

    private static boolean isPromised(Entry entry, Blob blob) {
        return blob.length() == entry.size() && blob.sha256().hex().equals(entry.sha256());
    }

    /** A text, by its name in the folder. */
    Optional<String> text(String name) {
        return Optional.ofNullable(texts.get(name));
    }

    Blob stored(String name) throws DamagedFile {
        return Optional.ofNullable(stored.get(name)).orElseThrow(() -> DamagedFile.of("archive.problem.json"));
    }

    byte[] content(Sha256 sha256) throws IOException {
        try (var in = parts.blobs().open(sha256)) {
            return in.readNBytes(ReleaseChecks.LONGEST_PAGE);
        }
    }

    Map<UploadId, Upload> recordings() {
        return recordings;
    }

    List<Picture> pictures() {
        return List.copyOf(pictures);
    }
}
