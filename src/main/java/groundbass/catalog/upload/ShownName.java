package groundbass.catalog.upload;

/** A file's name as a browser sent it, made fit for showing. It never becomes a path. */
final class ShownName {
    private static final int MOST_CHARACTERS = 120;

    private ShownName() {}

    /** The last part of a path of any system, without control and direction-changing characters; may be empty. */
    static String of(String sent) {
        String last = sent.substring(Math.max(sent.lastIndexOf('/'), sent.lastIndexOf('\\')) + 1);
        var shown = new StringBuilder();
        last.codePoints().filter(ShownName::isShown).limit(MOST_CHARACTERS).forEach(shown::appendCodePoint);
        return shown.toString().strip();
    }

    private static boolean isShown(int character) {
        int type = Character.getType(character);
        return type != Character.CONTROL
                && type != Character.FORMAT
                && type != Character.SURROGATE
                && type != Character.UNASSIGNED
                && type != Character.LINE_SEPARATOR
                && type != Character.PARAGRAPH_SEPARATOR;
    }
}
