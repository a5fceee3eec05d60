package groundbass.audience.visit;

/** How many visitors a lesson had for one kind: in its first 24 hours, 7 and 28 days, as far as these are over, and in all. */
public record VisitNumbers(long firstDay, long firstWeek, long firstMonth, long inAll) {
    public static final VisitNumbers NONE = new VisitNumbers(0, 0, 0, 0);
}
