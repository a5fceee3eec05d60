package groundbass.sound.mix;

/** What goes in comes out so many samples later. What comes out of a block is taken before the block goes in. */
final class DelayLine {
    private final float[] samples;
    private int at;

    DelayLine(int length) {
        this.samples = new float[length];
    }

    /** @param count at most the length of the line */
    void take(float[] out, int count) {
        int straight = Math.min(count, samples.length - at);
        System.arraycopy(samples, at, out, 0, straight);
        System.arraycopy(samples, 0, out, straight, count - straight);
    }

    /** In place of what was taken. */
    void put(float[] in, int count) {
        int straight = Math.min(count, samples.length - at);
        System.arraycopy(in, 0, samples, at, straight);
        System.arraycopy(in, straight, samples, 0, count - straight);
        at = (at + count) % samples.length;
    }
}
