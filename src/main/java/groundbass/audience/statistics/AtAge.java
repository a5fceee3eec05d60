package groundbass.audience.statistics;

/** What was taken of a lesson up to an age: how many downloads, by how many different students. */
public record AtAge(long downloads, long students) {}
