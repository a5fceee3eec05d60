package groundbass.web.program;

import groundbass.audience.statistics.Statistics;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.educator.FactorDemand;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.ProgramTokens;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.upload.Pictures;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.Uploads;
import groundbass.effort.Budget;
import groundbass.publishing.Publisher;
import groundbass.publishing.TakingBack;
import groundbass.release.Releases;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.student.file.ReleaseAnswers;
import java.time.Clock;
import java.util.List;

/** All operations of the interface, and what they need. */
public final class ProgramPages {
    private ProgramPages() {}

    /**
     * What every request passes.
     *
     * @param budget the one of the desk: whoever asks by a program asks no more of the machine
     */
    public record Entry(
            Pages pages,
            RateLimits limits,
            Budget budget,
            Educators educators,
            ProgramTokens tokens,
            FactorDemand demand,
            ProgramAnswers answers,
            Audit audit) {}

    /** What the operations work with. */
    public record Services(
            SeriesCatalog catalog,
            Episodes episodes,
            EpisodeService writing,
            Beginnings beginnings,
            Uploads uploads,
            Pictures pictures,
            TakingOut takingOut,
            Releases releases,
            Publisher publisher,
            TakingBack takingBack,
            Statistics statistics,
            ReleaseAnswers answers,
            Clock clock) {}

    public static List<PageGroup> of(Entry entry, Services services) {
        var callers = new Callers(entry.tokens(), entry.demand(), entry.limits());
        var door = new Door(callers, entry.limits(), entry.audit(), entry.pages());
        var once = new Once(entry.answers(), entry.limits(), entry.pages());
        var addressed = new Addressed(services.catalog(), services.episodes(), services.releases());
        var lessons = new LessonView(entry.pages());
        var writing = services.writing();
        return List.of(
                new DescriptionOperations(door, entry.educators()),
                new SeriesOperations(door, once, addressed, writing, services.beginnings(), lessons),
                new LessonOperations(door, addressed, lessons),
                new DraftOperations(door, addressed, writing),
                new RecordingOperations(
                        door, once, addressed, writing, services.uploads(), services.takingOut(), entry.limits()),
                new PictureOperations(
                        door,
                        once,
                        addressed,
                        writing,
                        services.pictures(),
                        services.takingOut(),
                        entry.limits(),
                        entry.budget()),
                new PreflightOperations(door, addressed, services.publisher(), entry.budget()),
                new PromiseOperations(door, addressed, services.publisher(), entry.budget()),
                new WithdrawalOperations(door, addressed, services.takingBack()),
                new ReleaseOperations(door, once, addressed, services.publisher(), entry.budget(), services.answers()),
                new FigureOperations(door, addressed, services.statistics(), services.clock()));
    }
}
