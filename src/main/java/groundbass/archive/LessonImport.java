package groundbass.archive;

import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.JsonMoments;
import groundbass.archive.file.Texts;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.episode.RevisionId;
import groundbass.catalog.episode.Withdrawal;
import groundbass.catalog.series.Series;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.Upload;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import groundbass.release.BuildState;
import groundbass.release.Bundles;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.ReleaseNote;
import groundbass.text.Message;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/** Brings one lesson of an archive in, whole or not at all, under the ids that it had. */
final class LessonImport {
    private final ArchiveParts parts;
    private final Texts texts;
    private final EducatorId owner;
    private final Series series;
    private final Set<UploadId> recordings;
    private final List<ArchiveRemark> findings;

    /**
     * @param recordings all that the archive brings
     * @param findings what is found is added to it
     */
    LessonImport(
            ArchiveParts parts,
            Texts texts,
            EducatorId owner,
            Series series,
            Set<UploadId> recordings,
            List<ArchiveRemark> findings) {
        this.parts = parts;
        this.texts = texts;
        this.owner = owner;
        this.series = series;
        this.recordings = recordings;
        this.findings = findings;
    }

    /** What became of a lesson. */
    enum Result {
        IN,
        ALREADY,
        LEFT
    }

    /** A lesson with all that stands beside it, ready for its rows. */
    private record Ready(
            Episode lesson,
            List<Revision> revisions,
            Optional<Draft> draft,
            List<Upload> uploads,
            List<Picture> pictures,
            List<ReadyRelease> releases) {}

    private record ReadyRelease(Release release, List<ReleaseFile> files) {}

    Result bringIn(String folder, LessonPart part) throws IOException {
        try {
            var id = EpisodeId.parse(part.id()).orElseThrow(() -> DamagedFile.of("archive.problem.json"));
            if (parts.episodes().isKnown(id)) {
                return known(folder, id);
            }
            var inside = new LessonFolder(parts, texts, folder, part);
            var wrong = inside.read(owner, id);
            findings.addAll(wrong);
            return wrong.isEmpty() ? enter(folder, ready(id, part, inside), part) : Result.LEFT;
        } catch (DamagedFile e) {
            findings.add(e.finding(folder, ArchiveNames.LESSON));
            return Result.LEFT;
        } catch (IllegalArgumentException | NullPointerException e) { // a value that no lesson of ours has, or none
            findings.add(ArchiveRemark.of(folder + "/" + ArchiveNames.LESSON, "archive.problem.json"));
            return Result.LEFT;
        }
    }

    private Result known(String folder, EpisodeId id) {
        boolean here = parts.episodes()
                .find(id)
                .filter(lesson -> lesson.series().equals(series.id()))
                .isPresent();
        if (!here) {
            findings.add(ArchiveRemark.of(folder, "archive.lesson.elsewhere"));
        }
        return here ? Result.ALREADY : Result.LEFT;
    }

    // --- reading

    private Ready ready(EpisodeId id, LessonPart part, LessonFolder inside) throws DamagedFile, IOException {
        var revisions = new ArrayList<Revision>();
        for (var each : part.revisions()) {
            revisions.add(revision(id, each, inside));
        }
        var fixed = revisions.stream().map(Revision::id).collect(Collectors.toSet());
        var releases = new ArrayList<ReadyRelease>();
        for (var each : part.releases()) {
            releases.add(release(id, each, fixed, inside));
        }
        return new Ready(
                lesson(id, part, !releases.isEmpty()),
                revisions,
                draft(id, part, inside),
                uploads(inside),
                pictures(inside),
                releases);
    }

    private Revision revision(EpisodeId lesson, LessonPart.RevisionPart part, LessonFolder inside) throws DamagedFile {
        return new Revision(
                new RevisionId(part.id()),
                lesson,
                part.number(),
                document(part.folder(), inside),
                part.note(),
                owner,
                JsonMoments.read(part.created()));
    }

    /** Without recordings that are not this educator's: an archive names any that it likes. */
    private EpisodeDocument document(String place, LessonFolder inside) throws DamagedFile {
        var read = DocumentFiles.read(name -> inside.text(place + name), "");
        var own = read.backingTracks().stream().filter(this::isOwn).toList();
        return own.size() == read.backingTracks().size()
                ? read
                : read.edit().backingTracks(own).done();
    }

    private boolean isOwn(BackingTrack track) {
        return parts.uploads()
                .find(track.upload())
                .map(upload -> upload.by().equals(owner))
                .orElseGet(() -> recordings.contains(track.upload()));
    }

    private Optional<Draft> draft(EpisodeId lesson, LessonPart part, LessonFolder inside) throws DamagedFile {
        if (part.saved() == null) {
            return Optional.empty();
        }
        var saved = JsonMoments.read(part.saved());
        return Optional.of(new Draft(owner, lesson, 1, document("", inside), Optional.of(saved)));
    }

    /** Those that are not here yet: another lesson that says the same may have brought one. */
    private List<Upload> uploads(LessonFolder inside) throws DamagedFile {
        var fresh = new ArrayList<Upload>();
        for (var upload : inside.recordings().values()) {
            var here = parts.uploads().findAny(upload.id());
            if (here.isPresent() && !here.get().by().equals(owner)) {
                throw DamagedFile.of("archive.problem.ids");
            }
            if (here.isEmpty()) {
                fresh.add(upload);
            }
        }
        return fresh;
    }

    private List<Picture> pictures(LessonFolder inside) throws DamagedFile {
        var fresh = new ArrayList<Picture>();
        for (var picture : inside.pictures()) {
            var here = parts.uploads().pictures().findAny(picture.id());
            if (here.isPresent() && !here.get().by().equals(owner)) {
                throw DamagedFile.of("archive.problem.ids");
            }
            if (here.isEmpty()) {
                fresh.add(picture);
            }
        }
        return fresh;
    }

    private Episode lesson(EpisodeId id, LessonPart part, boolean hasReleases) throws DamagedFile {
        EpisodeState state = new EpisodeState.Unscheduled();
        if (part.published() != null && hasReleases) {
            state = new EpisodeState.Published(JsonMoments.read(part.published()), withdrawal(part));
        }
        return new Episode(
                id,
                series.id(),
                part.number(),
                new Slug(part.slug()),
                part.shown().title(),
                Level.parse(part.shown().level()).orElseThrow(() -> DamagedFile.of("archive.problem.json")),
                part.shown().summary(),
                state,
                JsonMoments.read(part.created()));
    }

    private static Optional<Withdrawal> withdrawal(LessonPart part) throws DamagedFile {
        return part.withdrawn() == null
                ? Optional.empty()
                : Optional.of(new Withdrawal(
                        JsonMoments.read(part.withdrawn().at()),
                        part.withdrawn().why()));
    }

    private ReadyRelease release(
            EpisodeId lesson, LessonPart.ReleasePart part, Set<RevisionId> revisions, LessonFolder inside)
            throws DamagedFile, IOException {
        var files = new ArrayList<ReleaseFile>();
        for (var file : part.files()) {
            var role = ReleaseChecks.role(file.role());
            if (!role.isStored()) {
                throw DamagedFile.of("archive.problem.unsafe").in(file.file());
            }
            var blob = inside.stored(file.file());
            if (!ReleaseChecks.isUsual(role, file.mediaType())) {
                throw DamagedFile.of("archive.problem.unsafe").in(file.file());
            }
            files.add(new ReleaseFile(file.name(), role, file.mediaType(), blob.length(), blob.sha256()));
        }
        for (var file : files) {
            if (ReleaseChecks.isRead(file.role()) && !isSafe(file, files, inside)) {
                throw DamagedFile.of("archive.problem.unsafe").in("releases/" + part.number() + "/" + file.name());
            }
        }
        var spec = ReleaseChecks.spec(part, revisions);
        boolean whole = files.stream().anyMatch(file -> file.role() == FileRole.READ_ME);
        if (whole && files.stream().noneMatch(file -> file.role().isBundle())) {
            files.add(0, Bundles.of(spec, files, parts.blobs()));
        }
        var release = new Release(
                new ReleaseId(part.id()),
                lesson,
                spec,
                new BuildState.Ready(),
                JsonMoments.read(part.created()),
                Optional.of(JsonMoments.read(part.published())),
                new ReleaseNote(part.note(), part.noteByLetter()));
        return new ReadyRelease(release, files);
    }

    /** What is too long to be looked through as a whole is not safe, whatever its beginning says. */
    private static boolean isSafe(ReleaseFile file, List<ReleaseFile> files, LessonFolder inside)
            throws DamagedFile, IOException {
        return file.size() <= ReleaseChecks.LONGEST_PAGE
                && ReleaseChecks.isSafe(file, inside.content(file.sha256()), files);
    }

    // --- rows

    private Result enter(String folder, Ready ready, LessonPart part) {
        try {
            var entered = parts.jdbi().inTransaction(handle -> {
                Outcome<Episode> outcome =
                        parts.desk().bringIn(handle, owner, ready.lesson(), ready.revisions(), ready.draft());
                if (outcome.result().isPresent()) {
                    ready.uploads().forEach(upload -> parts.uploads().enter(handle, upload));
                    ready.pictures()
                            .forEach(picture -> parts.uploads().pictures().enter(handle, picture));
                    ready.releases().forEach(each -> parts.releases().enter(handle, each.release(), each.files()));
                }
                return outcome;
            });
            entered.problems().forEach(problem -> findings.add(told(folder, problem)));
            entered.result().ifPresent(lesson -> tell(folder, lesson, part));
            return entered.result().isPresent() ? Result.IN : Result.LEFT;
        } catch (UnableToExecuteStatementException e) {
            findings.add(ArchiveRemark.of(folder, RowFault.key(e)));
            return Result.LEFT;
        }
    }

    private static ArchiveRemark told(String folder, FieldProblem problem) {
        return new ArchiveRemark(folder, new Message(problem.key(), problem.args()));
    }

    /** What is not as it was, though the lesson came in. */
    private void tell(String folder, Episode lesson, LessonPart part) {
        if (lesson.number() != part.number()) {
            findings.add(ArchiveRemark.of(folder, "archive.lesson.number", part.number(), lesson.number()));
        }
        if (part.published() != null && !lesson.isPublished()) {
            findings.add(ArchiveRemark.of(folder, "archive.lesson.no-release"));
        }
        if (part.promised() != null) {
            findings.add(ArchiveRemark.of(
                    folder,
                    "archive.lesson.promised",
                    part.promised().local().replace('T', ' '),
                    part.promised().zone()));
        }
    }
}
