package groundbass.engraving.options;

/** Which staves a sheet has. */
public enum Staves {
    BOTH,
    TAB_ONLY,
    NOTATION_ONLY;

    public boolean hasNotation() {
        return this != TAB_ONLY;
    }

    public boolean hasTab() {
        return this != NOTATION_ONLY;
    }
}
