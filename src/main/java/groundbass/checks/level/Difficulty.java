package groundbass.checks.level;

/** For whom a line is, as teachers sort lessons. */
public enum Difficulty {
    BEGINNER("beginner"),
    INTERMEDIATE("intermediate"),
    ADVANCED("advanced");

    private final String code;

    Difficulty(String code) {
        this.code = code;
    }

    /** The word that documents and forms use. */
    public String code() {
        return code;
    }

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return "catalog.level." + code;
    }
}
