package groundbass.archive;

import groundbass.archive.file.Entry;
import groundbass.archive.file.Json;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.identity.Sha256;
import groundbass.lesson.NotePictures;
import groundbass.release.BuildSpecJson;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.store.OneMoment;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** Reads a lesson out of a site, all of it as it stands at one moment. */
final class LessonReader {
    private final ArchiveParts parts;
    private final EducatorId owner;

    LessonReader(ArchiveParts parts, EducatorId owner) {
        this.parts = parts;
        this.owner = owner;
    }

    LessonContent read(String folder, Episode listed) {
        return parts.jdbi().inTransaction(OneMoment.LEVEL, handle -> {
            var lesson = parts.episodes().find(listed.id()).orElse(listed);
            return new Reading(folder, lesson, listed.number()).content();
        });
    }

    /** What is gathered on the way. */
    private final class Reading {
        private final String folder;
        private final Episode lesson;
        private final int number;
        private final Map<String, String> texts = new LinkedHashMap<>();
        private final Map<String, Sha256> stored = new LinkedHashMap<>();
        private final Map<Sha256, String> places = new LinkedHashMap<>();
        private final List<Entry> entries = new ArrayList<>();

        /** @param number as the folder says it, whatever has been moved since */
        Reading(String folder, Episode lesson, int number) {
            this.folder = folder;
            this.lesson = lesson;
            this.number = number;
        }

        LessonContent content() {
            var draft = parts.desk().draft(owner, lesson.id()).filter(one -> one.version() > 0);
            add("", document(draft.map(Draft::document)));
            var revisions = parts.revisions().of(lesson.id()).stream()
                    .sorted(Comparator.comparingInt(Revision::number))
                    .toList();
            var fixed = revisions.stream().map(this::revision).toList();
            var recordings = Stream.concat(parts.uploads().of(lesson.id()).stream(), borrowed(draft, revisions))
                    .map(this::recording)
                    .toList();
            var pictures = Stream.concat(parts.uploads().pictures().of(lesson.id()).stream(), shown(draft, revisions))
                    .distinct()
                    .map(this::picture)
                    .toList();
            var releases = parts.releases().of(lesson.id()).stream()
                    .filter(release -> release.publishedAt().isPresent() && release.isReady())
                    .map(this::release)
                    .toList();
            var part = new LessonPart(
                    ArchiveManifest.FORMAT,
                    lesson.series().value(),
                    lesson.id().value(),
                    number,
                    lesson.slug().value(),
                    new LessonPart.Shown(lesson.title(), lesson.level().code(), lesson.summary()),
                    lesson.createdAt().toString(),
                    lesson.publishedAt().map(Instant::toString).orElse(null),
                    lesson.withdrawal()
                            .map(back -> new LessonPart.Withdrawn(back.at().toString(), back.why()))
                            .orElse(null),
                    promised(),
                    draft.flatMap(Draft::savedAt).map(Instant::toString).orElse(null),
                    fixed,
                    recordings,
                    pictures,
                    releases,
                    entries);
            return new LessonContent(folder, part, texts, stored);
        }

        /** Recordings that it says and that were sent for a lesson of another series, as duplicates have them. */
        private Stream<Upload> borrowed(Optional<Draft> draft, List<Revision> revisions) {
            var documents = Stream.concat(
                    draft.map(Draft::document).stream(), revisions.stream().map(Revision::document));
            return documents
                    .flatMap(document -> document.backingTracks().stream())
                    .map(BackingTrack::upload)
                    .distinct()
                    .flatMap(id -> parts.uploads().find(id).stream())
                    .filter(upload -> upload.by().equals(owner) && isElsewhere(upload));
        }

        /** Pictures that its notes show and that were sent for another lesson, as duplicates have them. */
        private Stream<Picture> shown(Optional<Draft> draft, List<Revision> revisions) {
            var documents = Stream.concat(
                    draft.map(Draft::document).stream(), revisions.stream().map(Revision::document));
            return documents
                    .flatMap(document -> NotePictures.ids(document.notes()).stream())
                    .distinct()
                    .flatMap(id -> parts.uploads().pictures().find(id).stream())
                    .filter(picture -> picture.by().equals(owner));
        }

        private boolean isElsewhere(Upload upload) {
            return parts.episodes()
                    .find(upload.episode())
                    .filter(other -> other.series().equals(lesson.series()))
                    .isEmpty();
        }

        /** What is being typed, else what was fixed last, else no more than a title. */
        private EpisodeDocument document(Optional<EpisodeDocument> draft) {
            return draft.or(() -> parts.revisions().latest(lesson.id()).map(Revision::document))
                    .orElseGet(() -> EpisodeDocument.titled(lesson.title(), lesson.level()));
        }

        private LessonPart.Promised promised() {
            return lesson.state() instanceof EpisodeState.Scheduled promise
                    ? new LessonPart.Promised(
                            promise.local().toString(), promise.zone().getId())
                    : null;
        }

        private LessonPart.RevisionPart revision(Revision revision) {
            String place = "revisions/" + revision.number() + "/";
            add(place, revision.document());
            return new LessonPart.RevisionPart(
                    revision.id().value(),
                    revision.number(),
                    place,
                    revision.createdAt().toString(),
                    revision.note());
        }

        private void add(String place, EpisodeDocument document) {
            DocumentFiles.write(document).forEach((name, text) -> {
                texts.put(place + name, text);
                entries.add(Entry.of(place + name, text));
            });
        }

        private LessonPart.RecordingPart recording(Upload upload) {
            String place =
                    "recordings/" + upload.id() + "." + upload.facts().format().extension();
            var blob = upload.blob();
            return new LessonPart.RecordingPart(
                    upload.id().value(),
                    upload.originalName(),
                    add(place, blob.sha256(), blob.length()),
                    upload.createdAt().toString());
        }

        private LessonPart.PicturePart picture(Picture picture) {
            String place = "pictures/" + picture.id() + "." + picture.format().extension();
            var blob = picture.blob();
            return new LessonPart.PicturePart(
                    picture.id().value(),
                    picture.originalName(),
                    picture.words(),
                    picture.format().value(),
                    picture.wide(),
                    picture.high(),
                    add(place, blob.sha256(), blob.length()),
                    picture.createdAt().toString());
        }

        /** @return where a file with this content lies: equal ones of a lesson are there once */
        private String add(String place, Sha256 sha256, long size) {
            return places.computeIfAbsent(sha256, fresh -> {
                stored.put(place, sha256);
                entries.add(Entry.of(place, sha256, size));
                return place;
            });
        }

        private LessonPart.ReleasePart release(Release release) {
            String place = "releases/" + release.spec().release() + "/";
            var files = parts.releases().files().of(release.id()).stream()
                    .filter(file -> file.role().isStored())
                    .map(file -> file(place, file))
                    .toList();
            return new LessonPart.ReleasePart(
                    release.id().value(),
                    release.spec().release(),
                    release.createdAt().toString(),
                    release.publishedAt().orElseThrow().toString(),
                    release.note().text(),
                    release.note().byLetter(),
                    Json.tree(BuildSpecJson.write(release.spec())),
                    files);
        }

        private LessonPart.FilePart file(String place, ReleaseFile file) {
            return new LessonPart.FilePart(
                    file.name(),
                    file.role().value(),
                    file.mediaType(),
                    add(place + file.name(), file.sha256(), file.size()));
        }
    }
}
