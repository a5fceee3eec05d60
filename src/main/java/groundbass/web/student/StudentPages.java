package groundbass.web.student;

import groundbass.catalog.Episodes;
import groundbass.catalog.Revisions;
import groundbass.catalog.SeriesCatalog;
import groundbass.catalog.SiteSettings;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import groundbass.web.general.HomePage;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import java.time.Clock;
import java.util.List;
import java.util.function.Supplier;

/** The page groups of the student's side. */
public final class StudentPages {
    private StudentPages() {}

    /** What every page group shares. */
    public record Shell(Pages pages, Installation installation, Supplier<SiteSettings> settings, Clock clock) {}

    /** Where lessons and their files are found. */
    public record Library(
            SeriesCatalog catalog, Episodes episodes, Revisions revisions, Releases releases, Blobs blobs) {}

    public static List<PageGroup> of(Shell shell, Library library) {
        var pages = shell.pages();
        var contents = new ReleaseContents(library.releases(), library.blobs(), shell.clock());
        var lessons = new Lessons(library.catalog(), library.episodes(), library.releases(), shell.clock());
        var cards = new Cards(contents);
        var views = new EpisodeViews(contents, new OwnTracks(library.revisions()));
        return List.of(
                new HomePage(
                        pages, new Home(lessons, cards, shell.installation().demo())),
                new SeriesPage(pages, lessons, cards),
                new EpisodePage(pages, lessons, views, shell.settings()));
    }
}
