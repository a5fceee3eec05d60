package groundbass.sound.unit;

/** White noise from -1 to 1, the same for the same seed (xorshift generator of Marsaglia 2003, from memory). */
public final class Noise {
    private int state;

    public Noise(int seed) {
        this.state = seed * 0x9E3779B9 ^ 0x5BD1E995;
        if (state == 0) {
            state = 1;
        }
    }

    public float next() {
        state ^= state << 13;
        state ^= state >>> 17;
        state ^= state << 5;
        return state * (1f / (1L << 31));
    }
}
