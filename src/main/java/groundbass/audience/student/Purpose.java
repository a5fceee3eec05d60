package groundbass.audience.student;

/** What a student can agree to; each is asked for on its own. */
public enum Purpose {
    /** Keeping the address and the list of downloads, without which there is no account. */
    ACCOUNT("account"),
    /** A letter when a new lesson is out. */
    LETTERS("letters");

    private final String column;

    Purpose(String column) {
        this.column = column;
    }

    String column() {
        return column;
    }

    static Purpose of(String column) {
        for (Purpose purpose : values()) {
            if (purpose.column.equals(column)) return purpose;
        }
        throw new IllegalArgumentException("no such purpose: " + column);
    }
}
