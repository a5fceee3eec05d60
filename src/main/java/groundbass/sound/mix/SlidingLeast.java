package groundbass.sound.mix;

/**
 * The least of the last so many values, one after the other: those that a later and smaller one has overtaken are let go
 * of, so that each is looked at twice at most.
 */
final class SlidingLeast {
    private final int length;
    private final float[] values;
    private final long[] places;
    private final int mask;
    private int first;
    private int held;
    private long now;

    /** @param length how many values back it looks */
    SlidingLeast(int length) {
        this.length = length;
        int room = Integer.highestOneBit(length) * 2; // a power of two wraps around without a division
        this.values = new float[room];
        this.places = new long[room];
        this.mask = room - 1;
    }

    /** Takes the next value; gives the least of it and those before it. */
    float next(float value) {
        while (held > 0 && values[last()] >= value) {
            held--;
        }
        held++;
        values[last()] = value;
        places[last()] = now;
        if (places[first] <= now - length) {
            first = (first + 1) & mask;
            held--;
        }
        now++;
        return values[first];
    }

    private int last() {
        return (first + held - 1) & mask;
    }
}
