package groundbass.engraving;

/** Which staves a sheet has. */
public enum Staves {
    BOTH,
    TAB_ONLY,
    NOTATION_ONLY;

    boolean hasNotation() {
        return this != TAB_ONLY;
    }

    boolean hasTab() {
        return this != NOTATION_ONLY;
    }
}
