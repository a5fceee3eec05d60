package groundbass.engraving.mark;

/** The faces of the text family that a sheet uses. */
public enum Face {
    REGULAR("Regular"),
    MEDIUM("Medium"),
    BOLD("Bold"),
    ITALIC("Italic");

    private final String suffix;

    Face(String suffix) {
        this.suffix = suffix;
    }

    String resource() {
        return "/fonts/ttf/AlegreyaSans/AlegreyaSans-" + suffix + ".ttf";
    }
}
