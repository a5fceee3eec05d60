package groundbass.web.statistics;

import groundbass.audience.statistics.SeriesUse;
import groundbass.audience.statistics.Statistics;
import groundbass.audience.student.Students;
import groundbass.audience.visit.VisitFigures;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.release.Releases;
import groundbass.release.find.LessonIndex;
import groundbass.store.Blobs;
import groundbass.web.shell.AccessFilter;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Routes;
import java.time.Clock;
import java.util.List;
import java.util.function.BooleanSupplier;

/** All pages of this room. An educator sees the figures of series that are open to them, and who took what where they may. */
public final class StatisticsPages implements PageGroup {
    private final List<PageGroup> groups;

    public StatisticsPages(
            Pages pages,
            AccessFilter accessFilter,
            SeriesCatalog catalog,
            Episodes episodes,
            Statistics statistics,
            SeriesUse use,
            VisitFigures visits,
            Releases releases,
            LessonIndex index,
            Blobs blobs,
            BooleanSupplier counting,
            Students students,
            Clock clock) {
        var services = new StatisticsServices(
                pages,
                accessFilter,
                catalog,
                episodes,
                statistics,
                use,
                visits,
                new ReleasedLines(releases, blobs),
                index,
                counting,
                students,
                clock);
        var tables = new Tables(services);
        groups = List.of(
                new FiguresPage(services),
                new SeriesFiguresPage(services),
                new LessonFiguresPage(services),
                new NextPage(services, tables),
                new TakerPages(services),
                tables);
    }

    @Override
    public void addTo(Routes routes) {
        groups.forEach(group -> group.addTo(routes));
    }
}
