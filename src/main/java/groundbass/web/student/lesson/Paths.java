package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.identity.Slug;
import groundbass.release.ReleaseId;

/** The addresses of the student's side. */
final class Paths {
    private Paths() {}

    static String of(Series series) {
        return "/series/" + series.slug().value();
    }

    static String of(Series series, Episode episode) {
        return of(series.slug(), episode.number());
    }

    static String of(Slug series, int number) {
        return "/series/" + series.value() + "/" + number;
    }

    /** To take a file home; each GET is recorded. */
    static String file(ReleaseId release, String name) {
        return "/files/" + release + "/" + name;
    }

    /** To play a recording on the page; that is practice, and no download. */
    static String play(ReleaseId release, String name) {
        return "/play/" + release + "/" + name;
    }

    /** The sheet of a line for a screen; which staves and how wide follows. */
    static String fitted(ReleaseId release, String line) {
        return "/sheet/" + release + "/" + line;
    }
}
