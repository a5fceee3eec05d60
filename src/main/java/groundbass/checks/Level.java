package groundbass.checks;

/** For whom a line is, as teachers sort lessons. */
public enum Level {
    BEGINNER("beginner"),
    INTERMEDIATE("intermediate"),
    ADVANCED("advanced");

    private final String code;

    Level(String code) {
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
