package groundbass.sound.mix;

/**
 * What begins in one bar of one stem, with its tail; nothing where nothing begins. The samples are not copied; nobody
 * changes them.
 *
 * @param samples what both ears hear
 * @param side what the left ear hears beside that, and the right ear turned over; as long, or empty for nothing
 */
@SuppressWarnings("ArrayRecordComponent")
public record BarSound(float[] samples, float[] side) {
    private static final float[] NONE = {};

    public static final BarSound NOTHING = new BarSound(NONE);

    public BarSound {
        if (side.length != 0 && side.length != samples.length) {
            throw new IllegalArgumentException("two lengths: " + samples.length + ", " + side.length);
        }
    }

    public BarSound(float[] samples) {
        this(samples, NONE);
    }

    public boolean isNothing() {
        return samples.length == 0;
    }
}
