package groundbass.audience.visit;

/**
 * How many visitors repeated a passage with this bar of a line in it.
 *
 * @param release the number of the release on whose sheet the bar has this number; 0 where that was not noted
 * @param bar 0 is a pickup
 */
public record LoopedBar(int release, String line, int bar, long visitors) {}
