package groundbass.engraving.options;

import groundbass.score.Feel;

/** The words that a sheet prints, in the reader's language. Engraving knows no language. */
public interface SheetWords {
    String pageOf(int page, int pages);

    /** What a sign means, for the legend. */
    String meaning(Sign sign);

    /** @param strings the open strings from the lowest, as {@code D A D G} */
    String tuning(String strings);

    /** How pairs are played and where the pulse is: {@code Swing 16ths}, {@code Half-time feel}. */
    String feel(Feel feel);

    String slowingTo(int perMinute);

    /** How often a repeat is played: {@code 3 times}. */
    String times(int times);

    /** What leads to the coda: {@code To Coda}; its sign follows. */
    String toCoda();

    /** The sign of notes that ring on: {@code let ring}. */
    String ring();
}
