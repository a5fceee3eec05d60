package groundbass.plaintab;

/** One row of text that is filled from the left at given places. Mutable. */
final class TabRow {
    private final StringBuilder text = new StringBuilder();

    /** Puts a text at a place, or one space behind what reaches beyond that. */
    void put(int at, String words) {
        if (!words.isEmpty()) {
            text.append(" ".repeat(Math.max(text.length() == 0 ? 0 : 1, at - text.length())))
                    .append(words);
        }
    }

    boolean isEmpty() {
        return text.length() == 0;
    }

    @Override
    public String toString() {
        return text.toString();
    }

    static String padded(String text, int width) {
        return text + " ".repeat(Math.max(0, width - text.length()));
    }
}
