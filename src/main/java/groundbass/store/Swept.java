package groundbass.store;

/**
 * What a sweep of stored files did.
 *
 * @param setAside how many files it moved to the quarantine
 * @param deleted how many it deleted that had lain there for weeks, or were left half written
 * @param heldBack how many it left where they are although no row names them, since they were too many to be believed
 */
public record Swept(int setAside, int deleted, int heldBack) {
    /** Whether there was nothing to do. */
    public boolean isIdle() {
        return setAside == 0 && deleted == 0 && heldBack == 0;
    }
}
