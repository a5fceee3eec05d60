package groundbass.sound.unit;

/** Something that sounds, sample after sample. Mutable, for one thread. */
public interface Unit {
    /** Adds the next {@code count} samples to {@code out}, from index {@code from} on. However they are cut, they are the same. */
    void render(float[] out, int from, int count);
}
