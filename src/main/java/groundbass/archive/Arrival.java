package groundbass.archive;

import groundbass.archive.file.ArchiveFiles;
import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Texts;
import groundbass.catalog.educator.AuditWord;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesForm;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;

/** What an archive and a folder that somebody wrote have in common on their way in: for whom, and what came of it. */
final class Arrival {
    final ArchiveParts parts;
    final ArchiveLimits limits;
    final EducatorId owner;
    final ArchiveFiles source;
    final Texts texts;
    final List<ArchiveRemark> findings = new ArrayList<>();
    private final String address;
    int came;
    int already;
    int damaged;

    /** @param address of the series, where it shall not have that of the archive; empty for that */
    Arrival(ArchiveParts parts, ArchiveLimits limits, EducatorId owner, ArchiveFiles source, String address) {
        this.parts = parts;
        this.limits = limits;
        this.owner = owner;
        this.source = source;
        this.texts = new Texts(source);
        this.address = address;
    }

    void demandFewLessons(int count) throws DamagedFile {
        if (count > limits.lessons()) {
            throw DamagedFile.of("archive.problem.many", count, limits.lessons());
        }
    }

    void tell(String where, Outcome<?> outcome) {
        outcome.problems()
                .forEach(problem -> findings.add(new ArchiveRemark(where, new Message(problem.key(), problem.args()))));
    }

    BroughtIn brought(Series series) {
        String told = series.id() + " lessons " + came + ", here before " + already + ", left out " + damaged;
        parts.audit().note(owner.value(), AuditWord.SERIES_IMPORTED, told);
        return new BroughtIn(series, came, already, damaged, findings);
    }

    /** The series as it shall be called here. */
    SeriesForm named(SeriesForm form) {
        return address.isEmpty() ? form : new SeriesForm(form.title(), address, form.summary(), form.zone());
    }

    /** Where the address is taken, one that is free is offered; all else is wrong with the file. */
    Outcome<Series> asked(Outcome<Series> made) {
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
        return new FieldProblem(address ? "address" : ArchiveImport.FILE, problem.key(), problem.args());
    }
}
