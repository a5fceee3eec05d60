package groundbass.sound.mix;

/**
 * What begins in one bar of one stem, with its tail; nothing where nothing begins. The samples are not copied; nobody
 * changes them.
 */
@SuppressWarnings("ArrayRecordComponent")
public record BarSound(float[] samples) {
    public static final BarSound NOTHING = new BarSound(new float[0]);

    public boolean isNothing() {
        return samples.length == 0;
    }
}
