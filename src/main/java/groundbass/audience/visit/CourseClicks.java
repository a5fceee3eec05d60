package groundbass.audience.visit;

/** How many visitors followed a lesson's link to a course. */
public record CourseClicks(String address, long visitors) {}
