package groundbass.sound.mix;

/** The sounds of a performance bar by bar, wherever they come from. */
public interface StemBars {
    /** @param bar its index in the order in which bars are played */
    BarSound bar(Stem stem, int bar);

    /** The clicks before the first whole bar, from the start of the performance on. */
    BarSound countIn();

    /** How many samples before its start a bar's sounds begin. */
    int lead(int bar);
}
