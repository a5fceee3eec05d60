package groundbass.engraving.mark;

/** Which point of a text run stands at its place. */
public enum Align {
    START(0),
    MIDDLE(0.5),
    END(1);

    private final double share;

    Align(double share) {
        this.share = share;
    }

    /** How much of the run's width lies left of its place. */
    public double share() {
        return share;
    }
}
