package groundbass.archive;

import groundbass.archive.file.ArchiveFiles;
import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Entry;
import groundbass.archive.file.Facts;
import groundbass.archive.file.FolderSource;
import groundbass.archive.file.Json;
import groundbass.archive.file.JsonMoments;
import groundbass.archive.file.Rooted;
import groundbass.archive.file.Salvage;
import groundbass.archive.file.Texts;
import groundbass.archive.file.ZipDirectory;
import groundbass.archive.file.ZipSource;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesId;
import groundbass.document.HouseStyle;
import groundbass.document.UploadId;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import groundbass.text.Message;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import java.util.zip.ZipException;
import org.jdbi.v3.core.statement.UnableToExecuteStatementException;

/**
 * Brings a series in: an archive with all that it holds, or a folder that somebody wrote, whose lessons come in as drafts.
 * Nothing that is here is changed, and what is here already does not come a second time. Each lesson comes in whole or
 * not at all; what is wrong with one keeps no other out.
 */
public final class ArchiveImport {
    private static final String FILE = "file";

    private final ArchiveParts parts;
    private final ArchiveLimits limits;

    public ArchiveImport(ArchiveParts parts, ArchiveLimits limits) {
        this.parts = parts;
        this.limits = limits;
    }

    /**
     * @param file a zip or a folder
     * @param address of the series, where it shall not have that of the archive; blank for that
     * @return refused, and nothing changed: {@code file} where it cannot be brought in at all, {@code address} where
     *     another series has its address
     * @throws IOException where this machine's disk fails
     */
    public Outcome<BroughtIn> bringIn(EducatorId owner, Path file, String address) throws IOException {
        if (Files.isDirectory(file)) {
            try (var folder = new FolderSource(file)) {
                return bringIn(owner, folder, address, Long.MAX_VALUE, List.of());
            }
        }
        long most = Math.min(limits.bytes(), Files.size(file) * ArchiveLimits.MOST_UNPACKED);
        if (ZipDirectory.length(file) > ZipDirectory.LONGEST) {
            return Outcome.refused(FILE, "archive.problem.large");
        }
        try (var zip = new ZipSource(file)) {
            return bringIn(owner, zip, address, most, List.of());
        } catch (ZipException | EOFException e) { // where its end says more than there is, it is the second
            return salvage(owner, file, address, most);
        }
    }

    private Outcome<BroughtIn> salvage(EducatorId owner, Path file, String address, long most) throws IOException {
        try (var rest = new Salvage(file)) {
            return rest.isEmpty()
                    ? Outcome.refused(FILE, rest.isCut() ? "archive.problem.large" : "archive.problem.no-zip")
                    : bringIn(
                            owner,
                            rest,
                            address,
                            most,
                            told(rest, file.getFileName().toString()));
        }
    }

    private static List<ArchiveRemark> told(Salvage rest, String file) {
        var brokeOff = ArchiveRemark.of(file, "archive.broke-off");
        return rest.isCut()
                ? List.of(
                        brokeOff,
                        ArchiveRemark.of(file, "archive.cut", Salvage.MOST_FILES, Salvage.MOST_BYTES / 1_000_000_000))
                : List.of(brokeOff);
    }

    private Outcome<BroughtIn> bringIn(
            EducatorId owner, ArchiveFiles source, String address, long most, List<ArchiveRemark> before)
            throws IOException {
        var rooted = Rooted.of(source);
        var run = new Run(owner, rooted, address.strip());
        run.findings.addAll(before);
        if (rooted.passedOver() > 0) {
            run.findings.add(ArchiveRemark.of("", "archive.passed-over", rooted.passedOver()));
        }
        try {
            boolean archive = rooted.names().stream()
                    .anyMatch(name -> name.equals(ArchiveNames.MANIFEST) || name.endsWith("/" + ArchiveNames.LESSON));
            return archive ? run.archive(most) : run.written();
        } catch (DamagedFile e) {
            return Outcome.refused(FILE, e.why().key(), e.why().args().toArray());
        }
    }

    /** @param length of its list, in characters: it has at least as many bytes */
    private record Listed(String folder, LessonPart part, int length) {}

    /** What may still come: asked after each list, so that what is too much is not held first. */
    private final class Bounds {
        private long left;

        Bounds(long most) {
            this.left = Math.min(most, limits.bytes());
        }

        void take(Listed lesson) throws DamagedFile {
            var files = lesson.part().files();
            if (files.size() > limits.filesOfALesson()) {
                throw DamagedFile.of("archive.problem.many", files.size(), limits.filesOfALesson());
            }
            take(lesson.length());
            for (var entry : files) {
                take(entry.size());
            }
        }

        private void take(long bytes) throws DamagedFile {
            if (bytes > left) {
                throw DamagedFile.of("archive.problem.large");
            }
            left -= bytes;
        }
    }

    /** One archive or folder on its way in. */
    private final class Run {
        private final EducatorId owner;
        private final ArchiveFiles source;
        private final Texts texts;
        private final String address;
        private final List<ArchiveRemark> findings = new ArrayList<>();
        private int came;
        private int already;
        private int damaged;

        Run(EducatorId owner, ArchiveFiles source, String address) {
            this.owner = owner;
            this.source = source;
            this.texts = new Texts(source);
            this.address = address;
        }

        // --- an archive

        Outcome<BroughtIn> archive(long most) throws DamagedFile, IOException {
            var manifest = manifest();
            var facts = SeriesFacts.read(promised(manifest));
            var lessons = lessons(manifest, new Bounds(most));
            var id = seriesId(manifest, lessons);
            boolean out = lessons.stream()
                    .anyMatch(lesson -> lesson.part().published() != null
                            && !lesson.part().releases().isEmpty());
            if (out && !parts.settings().current().imprint().isComplete()) {
                return Outcome.refused(FILE, "archive.problem.imprint");
            }
            var series = series(id, manifest, facts);
            return series.result().isPresent()
                    ? Outcome.done(bringIn(series.result().get(), lessons))
                    : Outcome.refused(series.problems());
        }

        /** Empty where it is gone or damaged: each lesson has a list of its own. */
        private Optional<ArchiveManifest> manifest() throws DamagedFile {
            try {
                var manifest = texts.find(ArchiveNames.MANIFEST, Json.LONGEST);
                if (manifest.isEmpty()) {
                    findings.add(ArchiveRemark.of(ArchiveNames.MANIFEST, "archive.no-manifest"));
                    return Optional.empty();
                }
                var read = Json.read(manifest.get(), ArchiveManifest.class);
                demandKnown(read.format());
                read.missing().forEach(file -> findings.add(ArchiveRemark.of(file, "archive.was-lost")));
                return Optional.of(read);
            } catch (DamagedFile e) {
                if (e.why().key().equals("archive.problem.later")) {
                    throw e;
                }
                findings.add(ArchiveRemark.of(ArchiveNames.MANIFEST, "archive.no-manifest"));
                return Optional.empty();
            }
        }

        private void demandKnown(int format) throws DamagedFile {
            if (format > ArchiveManifest.FORMAT) {
                throw DamagedFile.of("archive.problem.later");
            }
        }

        /** What the series says of itself, though it was changed since: it is looked over at the desk. */
        private Facts promised(Optional<ArchiveManifest> manifest) throws DamagedFile {
            var facts = WrittenSeries.seriesFacts(texts);
            for (var entry : manifest.map(ArchiveManifest::files).orElse(List.of())) {
                if (entry.name().equals(ArchiveNames.SERIES)) {
                    try {
                        texts.find(ArchiveNames.SERIES, entry, ArchiveLimits.LONGEST_TEXT);
                    } catch (DamagedFile e) {
                        findings.add(ArchiveRemark.of(ArchiveNames.SERIES, "archive.series-changed"));
                    }
                }
            }
            return facts;
        }

        private List<Listed> lessons(Optional<ArchiveManifest> manifest, Bounds bounds) throws DamagedFile {
            var folders = new TreeSet<>(ArchiveNames.BY_NUMBER);
            var promised = manifest.map(ArchiveManifest::lessons).orElse(List.of());
            promised.forEach(lesson -> folders.add(lesson.folder()));
            source.names().stream()
                    .filter(name -> name.endsWith("/" + ArchiveNames.LESSON))
                    .map(name -> name.substring(0, name.length() - ArchiveNames.LESSON.length() - 1))
                    .filter(folder -> folder.indexOf('/') < 0)
                    .forEach(folders::add);
            if (folders.size() > limits.lessons()) {
                throw DamagedFile.of("archive.problem.many", folders.size(), limits.lessons());
            }
            var lists = new ArrayList<Listed>();
            for (String folder : folders) {
                var entry = promised.stream()
                        .filter(lesson -> folder.equals(lesson.folder()))
                        .map(ArchiveManifest.LessonPart::list)
                        .findFirst();
                var listed = list(folder, entry);
                if (listed.isPresent()) {
                    bounds.take(listed.get());
                    lists.add(listed.get());
                }
            }
            return lists;
        }

        private Optional<Listed> list(String folder, Optional<Entry> promised) throws DamagedFile {
            String name = folder + "/" + ArchiveNames.LESSON;
            try {
                String text = promised.isPresent()
                        ? texts.find(name, promised.get(), Json.LONGEST)
                        : texts.find(name, Json.LONGEST).orElse("");
                var part = Json.read(text, LessonPart.class);
                demandKnown(part.format());
                return Optional.of(new Listed(folder, part, text.length()));
            } catch (DamagedFile e) {
                if (e.why().key().equals("archive.problem.later")) {
                    throw e;
                }
                findings.add(e.finding(name));
                damaged++;
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
            var here = parts.catalog().find(id);
            if (here.isPresent()) {
                return here.filter(series -> series.owner().equals(owner))
                        .map(Outcome::done)
                        .orElseGet(() -> Outcome.refused(FILE, "archive.problem.elsewhere"));
            }
            Instant created = manifest.isPresent()
                    ? JsonMoments.read(manifest.get().series().created())
                    : parts.clock().instant();
            return parts.jdbi().inTransaction(handle -> {
                var made = parts.catalog().bringIn(owner, id, at(address, facts.form()), created);
                made.result().ifPresent(series -> settings(series, facts));
                return asked(made, facts.form());
            });
        }

        private void settings(Series series, SeriesFacts facts) {
            if (!facts.style().equals(HouseStyle.USUAL)) {
                parts.styles().save(owner, series.id(), facts.style());
            }
            if (!facts.rhythm().first().isBlank()) {
                tell(ArchiveNames.SERIES, parts.rhythms().save(owner, series.id(), facts.rhythm()));
            }
            parts.outlooks().save(owner, series.id(), facts.outlook());
            if (!facts.news().subject().isBlank() || !facts.news().opening().isBlank()) {
                tell(ArchiveNames.SERIES, parts.news().save(owner, series.id(), facts.news()));
            }
            if (texts.has(ArchiveNames.BEGINNING + DocumentFiles.FACTS)) {
                try {
                    var document = DocumentFiles.read(name -> texts.find(ArchiveNames.BEGINNING + name), "");
                    tell(ArchiveNames.SERIES, parts.beginnings().save(owner, series.id(), document));
                } catch (DamagedFile e) {
                    findings.add(e.finding(ArchiveNames.BEGINNING));
                }
            }
        }

        private void tell(String where, Outcome<?> outcome) {
            outcome.problems()
                    .forEach(problem ->
                            findings.add(new ArchiveRemark(where, new Message(problem.key(), problem.args()))));
        }

        private BroughtIn bringIn(Series series, List<Listed> lessons) throws IOException {
            var lesson = new LessonImport(parts, texts, owner, series, recordings(lessons), findings);
            for (var listed : lessons) {
                if (!series.id().value().equals(listed.part().series())) {
                    findings.add(ArchiveRemark.of(listed.folder(), "archive.problem.other-series"));
                    damaged++;
                    continue;
                }
                switch (lesson.bringIn(listed.folder(), listed.part())) {
                    case IN -> came++;
                    case ALREADY -> already++;
                    case LEFT -> damaged++;
                }
            }
            return brought(series);
        }

        private Set<UploadId> recordings(List<Listed> lessons) {
            var ids = new HashSet<UploadId>();
            lessons.forEach(lesson -> lesson.part().recordings().forEach(recording -> UploadId.parse(
                            String.valueOf(recording.id()))
                    .ifPresent(ids::add)));
            return ids;
        }

        private BroughtIn brought(Series series) {
            String told = series.id() + " lessons " + came + ", here before " + already + ", left out " + damaged;
            parts.audit().note(owner.value(), AuditWord.SERIES_IMPORTED, told);
            return new BroughtIn(series, came, already, damaged, findings);
        }

        // --- a folder that somebody wrote

        Outcome<BroughtIn> written() throws DamagedFile {
            var read = WrittenSeries.read(texts, source);
            if (read.lessons().size() > limits.lessons()) {
                throw DamagedFile.of("archive.problem.many", read.lessons().size(), limits.lessons());
            }
            findings.addAll(read.findings());
            damaged += read.findings().size();
            var form = at(address, read.form());
            var here = Slug.parse(form.slug().strip()).flatMap(parts.catalog()::find);
            var series = here.filter(one -> one.owner().equals(owner))
                    .map(Outcome::done)
                    .orElseGet(() -> asked(parts.catalog().create(owner, form), form));
            series.result().ifPresent(one -> read.lessons().forEach(lesson -> write(one, lesson)));
            return series.result().isPresent()
                    ? Outcome.done(brought(series.result().get()))
                    : Outcome.refused(series.problems());
        }

        private void write(Series series, WrittenSeries.Lesson lesson) {
            if (parts.episodes().find(series.slug(), lesson.number()).isPresent()) {
                already++;
                return;
            }
            var made = create(series, lesson);
            tell(lesson.folder(), made);
            made.result()
                    .filter(one -> one.number() != lesson.number())
                    .ifPresent(one -> tell(lesson.folder(), parts.desk().move(owner, one.id(), lesson.number())));
            came += made.result().isPresent() ? 1 : 0;
            damaged += made.result().isPresent() ? 0 : 1;
        }

        private Outcome<Episode> create(Series series, WrittenSeries.Lesson lesson) {
            try {
                return parts.desk().create(owner, series.id(), lesson.document());
            } catch (UnableToExecuteStatementException e) {
                return Outcome.refused(FILE, RowFault.key(e));
            }
        }
    }

    private static SeriesForm at(String address, SeriesForm form) {
        return address.isEmpty() ? form : new SeriesForm(form.title(), address, form.summary(), form.zone());
    }

    /** Where the address is taken, one that is free is offered; all else is wrong with the file. */
    private Outcome<Series> asked(Outcome<Series> made, SeriesForm form) {
        if (made.result().isPresent()) {
            return made;
        }
        return Outcome.refused(made.problems().stream()
                .map(problem -> problem.key().equals("catalog.problem.slug.taken") ? taken(problem) : ofFile(problem))
                .toList());
    }

    private FieldProblem taken(FieldProblem problem) {
        var wanted = new Slug(problem.args().get(0).toString());
        return FieldProblem.of(
                "address",
                "archive.problem.address",
                wanted.value(),
                parts.catalog().freeLike(wanted).value());
    }

    private static FieldProblem ofFile(FieldProblem problem) {
        boolean address = problem.field().equals("slug");
        return new FieldProblem(address ? "address" : FILE, problem.key(), problem.args());
    }
}
