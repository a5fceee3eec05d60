package groundbass.catalog.upload;

import java.time.Instant;

/**
 * A recording or picture that was taken out of its lesson and can be put back.
 *
 * @param id of the upload or picture
 * @param name of a recording the file's, of a picture the words that stand for it
 */
public record TakenOut(String id, String name, Instant at) {
    /** Until when it can be put back. */
    public Instant until() {
        return at.plus(TakingOut.KEPT);
    }
}
