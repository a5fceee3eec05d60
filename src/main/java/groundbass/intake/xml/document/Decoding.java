package groundbass.intake.xml.document;

import groundbass.intake.notice.Unreadable;
import groundbass.text.Message;
import java.io.BufferedInputStream;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.Reader;
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

    /** What decodes them as they are read; bytes that are no characters are a {@link CharacterCodingException} there. */
    static Reader reader(InputStream bytes) throws IOException, Unreadable {
        try {
            return decoded(bytes);
        } catch (IOException | Unreadable e) {
            bytes.close();
            throw e;
        }
    }

    private static Reader decoded(InputStream bytes) throws IOException, Unreadable {
        var document = new BufferedInputStream(bytes);
        document.mark(DECLARATION);
        byte[] head = document.readNBytes(DECLARATION);
        document.reset();
        var reader =
                new BufferedReader(new InputStreamReader(document, charset(head).newDecoder()));
        reader.mark(1);
        if (reader.read() != BYTE_ORDER_MARK) {
            reader.reset();
        }
        return reader;
    }

    /** @param document as much of it as its declaration is long */
    private static Charset charset(byte[] document) throws Unreadable {
        if (begins(document, 0xFE, 0xFF) || begins(document, 0xFF, 0xFE)) {
            return StandardCharsets.UTF_16;
        }
        if (begins(document, 0, '<') || begins(document, '<', 0)) {
            return document[0] == 0 ? StandardCharsets.UTF_16BE : StandardCharsets.UTF_16LE;
        }
        var head = new String(document, StandardCharsets.ISO_8859_1);
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
