package groundbass.web.program;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import io.javalin.http.NotFoundResponse;
import java.util.List;

/** What addresses name, for the educator whose it is; somebody else's is not there (404). */
record Own(SeriesCatalog catalog, Episodes episodes, Releases releases) {
    /** All of theirs, the oldest first. */
    List<Series> allSeries(Call call) {
        return catalog.ownedBy(call.who());
    }

    /** The series that {@code {series}} names. */
    Series series(Call call) {
        return SeriesId.parse(call.ctx().pathParam("series"))
                .flatMap(id -> catalog.ownedBy(call.who(), id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The lesson that {@code {lesson}} names. */
    Episode lesson(Call call) {
        return EpisodeId.parse(call.ctx().pathParam("lesson"))
                .flatMap(id -> episodes.ownedBy(call.who(), id))
                .orElseThrow(NotFoundResponse::new);
    }

    /** The release that {@code {release}} names. */
    Release release(Call call) {
        return ReleaseId.parse(call.ctx().pathParam("release"))
                .flatMap(releases::find)
                .filter(release ->
                        episodes.ownedBy(call.who(), release.episode()).isPresent())
                .orElseThrow(NotFoundResponse::new);
    }

    Series seriesOf(Episode lesson) {
        return catalog.find(lesson.series()).orElseThrow();
    }
}
