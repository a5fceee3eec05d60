package groundbass.groove;

import groundbass.score.Fraction;

/**
 * One click on the timeline of a performance.
 *
 * @param first whether it marks the first beat of a bar
 * @param countIn whether it comes before the first whole bar
 */
public record Click(Fraction at, double seconds, boolean first, boolean countIn) {}
