package groundbass.web.program;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.catalog.series.SeriesPart;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** What addresses name, for educators who may do that with it; for all others it is not there (404). */
record Addressed(SeriesCatalog catalog, Episodes episodes, Releases releases) {
    /** All whose figures they read at least, the oldest first. */
    List<Series> allSeries(Call call) {
        return catalog.open(call.who(), Deed.READ_FIGURES);
    }

    /** What they are to a series. */
    SeriesPart part(Call call, Series series) {
        return catalog.part(call.who(), series.id()).orElseThrow(NotFoundResponse::new);
    }

    /** The series that {@code {series}} names, to write in. */
    Series series(Call call) {
        return series(call, Deed.WRITE);
    }

    Series series(Call call, Deed deed) {
        return SeriesId.parse(call.ctx().pathParam("series"))
                .flatMap(id -> catalog.open(call.who(), deed, id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The lesson that {@code {lesson}} names, to write in. */
    Episode lesson(Call call) {
        return lesson(call, Deed.WRITE);
    }

    Episode lesson(Call call, Deed deed) {
        return EpisodeId.parse(call.ctx().pathParam("lesson"))
                .flatMap(id -> episodes.open(call.who(), deed, id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The release that {@code {release}} names. */
    Release release(Call call) {
        return ReleaseId.parse(call.ctx().pathParam("release"))
                .flatMap(releases::find)
                .filter(release ->
                        episodes.open(call.who(), Deed.WRITE, release.episode()).isPresent())
                .orElseThrow(NotFoundResponse::new);
    }

    Series seriesOf(Episode lesson) {
        return catalog.find(lesson.series()).orElseThrow();
    }
}
