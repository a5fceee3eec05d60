package groundbass.audience.statistics;

import groundbass.catalog.series.SeriesId;
import java.time.LocalDate;

/**
 * In what a student takes part, as far as it is summed up.
 *
 * @param joined the Monday of the week in which they took their first thing of the series
 * @param weeks in how many weeks they took anything of it
 */
public record TakingPart(SeriesId series, LocalDate joined, int weeks) {}
