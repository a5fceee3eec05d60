package groundbass.web.gate;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.regex.Pattern;

/**
 * Sends other spellings of an address to the one that the site uses (RFC 3986 section 6.2.2): what needs no percent sign
 * is written without it, hexadecimal digits are large, and no slash ends a path. So a page is kept once, and found once.
 */
public final class OneAddress {
    private static final String PLAIN = "-._~!$&'()*+,;=:@/"; // RFC 3986 section 3.3, besides letters and digits
    private static final Pattern READABLE = Pattern.compile("([^%]|%[0-9A-Fa-f]{2})*+");

    private OneAddress() {}

    /** Answers with a redirect where a page is asked for by another spelling of its address. */
    public static void check(Context ctx) {
        boolean reading = ctx.method().equals(HandlerType.GET) || ctx.method().equals(HandlerType.HEAD);
        String asked = ctx.path();
        if (!reading || !READABLE.matcher(asked).matches()) {
            return;
        }
        String one = of(asked);
        if (!one.equals(asked)) {
            String query = ctx.queryString() == null ? "" : "?" + ctx.queryString();
            ctx.redirect(one + query, HttpStatus.MOVED_PERMANENTLY);
            ctx.skipRemainingHandlers();
        }
    }

    /** @param path as it came, where each percent sign stands before two digits */
    static String of(String path) {
        var one = new StringBuilder();
        byte[] bytes = path.getBytes(StandardCharsets.UTF_8);
        for (int i = 0; i < bytes.length; i++) {
            boolean encoded = bytes[i] == '%';
            int value = encoded ? HexFormat.fromHexDigits(path(bytes, i + 1)) : bytes[i] & 0xff;
            append(one, value, encoded);
            i += encoded ? 2 : 0;
        }
        return withoutEnd(one);
    }

    private static String path(byte[] bytes, int from) {
        return new String(bytes, from, 2, StandardCharsets.US_ASCII);
    }

    /** A slash that was encoded is no border of segments, and stays encoded. */
    private static void append(StringBuilder one, int value, boolean encoded) {
        boolean plain = value < 128 && (Character.isLetterOrDigit(value) || PLAIN.indexOf(value) >= 0);
        if (plain && !(encoded && value == '/')) {
            one.append((char) value);
        } else {
            one.append('%').append(HexFormat.of().withUpperCase().toHexDigits((byte) value));
        }
    }

    /** A single slash is left at the start, so that no address leads to another host. */
    private static String withoutEnd(StringBuilder path) {
        int end = path.length();
        while (end > 1 && path.charAt(end - 1) == '/') {
            end--;
        }
        int start = 0;
        while (start + 1 < end && path.charAt(start) == '/' && path.charAt(start + 1) == '/') {
            start++;
        }
        return path.substring(start, end);
    }
}
