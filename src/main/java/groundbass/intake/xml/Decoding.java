package groundbass.intake.xml;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.StandardCharsets;
import java.util.regex.Pattern;

/**
 * The characters of a document: by its byte order mark, else by its declaration, else UTF-8 (XML 1.0 appendix F). Bytes that
 * are none are an error here, for the parser of the JDK would print them on standard error.
 */
final class Decoding {
    private static final Pattern DECLARED =
            Pattern.compile("^<\\?xml[^>]*encoding\\s*=\\s*[\"']([A-Za-z0-9._-]{1,40})[\"']");
    private static final int DECLARATION = 200;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private Decoding() {}

    static String text(byte[] document) throws Unreadable {
        try {
            String text = charset(document)
                    .newDecoder()
                    .decode(ByteBuffer.wrap(document))
                    .toString();
            return !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new Unreadable(Message.of("intake.refused.characters"), e);
        }
    }

    private static Charset charset(byte[] document) throws Unreadable {
        if (begins(document, 0xFE, 0xFF) || begins(document, 0xFF, 0xFE)) {
            return StandardCharsets.UTF_16;
        }
        if (begins(document, 0, '<') || begins(document, '<', 0)) {
            return document[0] == 0 ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
        }
        var head = new String(document, 0, Math.min(document.length, DECLARATION), StandardCharsets.ISO_8859_1);
        var declared = DECLARED.matcher(head);
        return declared.find() ? named(declared.group(1)) : StandardCharsets.UTF_8;
    }

    private static boolean begins(byte[] document, int first, int second) {
        return document.length > 1 && (document[0] & 0xFF) == first && (document[1] & 0xFF) == second;
    }

    private static Charset named(String name) throws Unreadable {
        try {
            boolean known = Charset.isSupported(name) && Charset.forName(name).canEncode();
            if (known && !name.startsWith("UTF-16")) {
                return Charset.forName(name);
            }
        } catch (IllegalCharsetNameException e) {
            throw new Unreadable(Message.of("intake.refused.characters"), e);
        }
        throw new Unreadable(Message.of("intake.refused.characters"));
    }
}
