package groundbass.linetext.source;

/** Characters that word processors and other keyboards put where line text has a plain one; one for one. */
public final class Lookalikes {
    private Lookalikes() {}

    public static String plain(String text) {
        if (isPlain(text)) {
            return text;
        }
        var plain = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            plain.append(plain(text.charAt(i)));
        }
        return plain.toString();
    }

    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            if (text.charAt(i) > '~' || text.charAt(i) < ' ') {
                return false;
            }
        }
        return true;
    }

    private static char plain(char c) {
        return switch (c) {
            case '\u266F', '\uFF03' -> '#';
            case '\u266D' -> 'b';
            case '\u2010', '\u2011', '\u2012', '\u2013', '\u2014', '\u2212' -> '-';
            case '\uFF0C' -> ',';
            case '\uFF0B' -> '+';
            case '\uFF06' -> '&';
            case '\uFF1D' -> '=';
            case '\u00D7', '\u2217' -> '*';
            case '\u2044', '\u2215' -> '/';
            case '\u2236' -> ':';
            default -> Character.isWhitespace(c) || Character.isSpaceChar(c) || Character.isISOControl(c) ? ' ' : c;
        };
    }
}
