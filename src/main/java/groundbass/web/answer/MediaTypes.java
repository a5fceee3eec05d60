package groundbass.web.answer;

import java.util.Locale;

/** Kinds of content as an answer names them. */
public final class MediaTypes {
    private MediaTypes() {}

    /**
     * A media type with the character encoding beside it where it is one of text, for everything of ours is UTF-8. JSON is
     * UTF-8 by itself and names none (RFC 8259 section 11).
     */
    public static String encoded(String mediaType) {
        String kind = mediaType.toLowerCase(Locale.ROOT);
        boolean text = kind.startsWith("text/") || kind.endsWith("/xml") || kind.endsWith("+xml");
        return text && !kind.contains("charset=") ? mediaType + "; charset=utf-8" : mediaType;
    }
}
