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

    /**
     * Whether the bare figure says it: so many in the time of the next lower power of two, or a power of two in the time
     * of three or its doublings (rule: tuplet-ratio).
     */
    public boolean isUsual() {
        boolean ofPower = normal == Integer.highestOneBit(actual - 1);
        boolean ofThree = Integer.bitCount(actual) == 1 && normal % 3 == 0 && Integer.bitCount(normal / 3) == 1;
        return ofPower || ofThree;
    }
}
