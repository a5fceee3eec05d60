package groundbass.signal;

/** Sound that comes block by block, once, for one thread: so that no length of it has to fit into memory. */
public interface Sound {
    SampleRate rate();

    int channels();

    /** How many frames there are in all. */
    long frames();

    /**
     * Fills the beginning of each channel with what comes next, from -1 to 1.
     *
     * @return how many frames that were; 0 at the end
     */
    int read(float[][] channels);
}
