package groundbass.web.statistics;

/**
 * What the columns of a chart are drawn by. Lengths are in units of the drawing, a column {@value #STEP} apart from the next
 * and the whole {@value #HEIGHT} high; the page stretches it.
 *
 * @param top how many downloads the full height stands for
 */
record ColumnScale(long top) {
    static final int STEP = 10;
    static final int HEIGHT = 1000;

    /** A piece of a column, measured from above. */
    public record Part(int y, int height) {}

    /** Up to the next number of the kind 2, 4, 10, 20, 40, 100, whose half is whole as well. */
    static ColumnScale upTo(long most) {
        long ten = 1;
        while (10 * ten < most) {
            ten *= 10;
        }
        for (long step : new long[] {2, 4, 10}) {
            if (step * ten >= most) return new ColumnScale(step * ten);
        }
        throw new IllegalStateException("no number is above " + most);
    }

    /** The piece of a column from one number of downloads to a higher one. */
    Part part(long from, long until) {
        int upper = fromAbove(until);
        return new Part(upper, fromAbove(from) - upper);
    }

    private int fromAbove(long downloads) {
        return HEIGHT - Math.toIntExact(HEIGHT * downloads / top);
    }
}
