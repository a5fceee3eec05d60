package groundbass.writing;

/**
 * Elements that share a time they do not usually fill: {@code actual} in the time of {@code normal} (rule: tuplet-sum).
 *
 * @param first, last indexes of elements in their voice, both included
 */
public record TupletGroup(int first, int last, int actual, int normal) {
    public TupletGroup {
        if (first > last || actual < 2 || normal < 1) {
            throw new IllegalArgumentException("no such tuplet: " + actual + ":" + normal);
        }
    }
}
