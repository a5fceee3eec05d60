package groundbass.audience.visit;

/** How many visitors repeated a passage with this bar of a line in it; 0 is a pickup. */
public record LoopedBar(String line, int bar, long visitors) {}
