package groundbass.audience.visit;

/** How many visitors played so many quarters of a line at least; 0 quarters are one bar. */
public record PlayedPart(String line, int quarters, long visitors) {}
