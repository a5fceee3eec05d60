package groundbass.engraving.mark;

/** Text made safe inside XML and HTML. */
public final class Xml {
    private Xml() {}

    public static String text(String text) {
        return escape(text, false);
    }

    public static String attribute(String text) {
        return escape(text, true);
    }

    private static String escape(String text, boolean quotes) {
        var out = new StringBuilder(text.length() + 8);
        text.codePoints().forEach(c -> {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append(quotes ? "&quot;" : "\"");
                default -> out.appendCodePoint(isAllowed(c) ? c : 0xFFFD);
            }
        });
        return out.toString();
    }

    /** The characters of XML 1.0, production 2. */
    private static boolean isAllowed(int c) {
        return c == '\t' || c == '\n' || (c >= 0x20 && c < 0xD800) || (c > 0xDFFF && c != 0xFFFE && c != 0xFFFF);
    }
}
