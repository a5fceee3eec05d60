package groundbass.web.statistics;

import groundbass.catalog.series.Series;
import groundbass.web.view.PageOf;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * What stands of one series on a page of a list of all lessons.
 *
 * @param skipped how many of its first lessons stand on pages before
 * @param most how many of those that follow stand on this one
 */
record SeriesOnPage(Series series, int skipped, int most) {
    /** The parts of one page. @param lessons how many a series has */
    static List<SeriesOnPage> on(PageOf page, List<Series> all, ToIntFunction<Series> lessons) {
        var parts = new ArrayList<SeriesOnPage>();
        int skipped = page.skipped();
        int left = page.size();
        for (var series : all) {
            int count = lessons.applyAsInt(series);
            int here = Math.max(0, Math.min(count - Math.max(0, skipped), left));
            // a series that has nothing out is still told of, on the page where it would stand
            boolean shown = count == 0 ? skipped <= 0 && left > 0 : here > 0;
            if (shown) {
                parts.add(new SeriesOnPage(series, Math.max(0, skipped), here));
            }
            skipped -= count;
            left -= here;
        }
        return parts;
    }
}
