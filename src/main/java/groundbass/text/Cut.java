package groundbass.text;

/** Texts cut to a length. */
public final class Cut {
    private Cut() {}

    /** At most so many chars of a text from its start, never half of a surrogate pair. */
    public static String to(String text, int longest) {
        if (text.length() <= longest) {
            return text;
        }
        boolean halves = longest > 0
                && Character.isHighSurrogate(text.charAt(longest - 1))
                && Character.isLowSurrogate(text.charAt(longest));
        return text.substring(0, halves ? longest - 1 : longest);
    }
}
