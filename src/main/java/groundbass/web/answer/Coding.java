package groundbass.web.answer;

import com.aayushatharva.brotli4j.Brotli4jLoader;
import com.aayushatharva.brotli4j.encoder.Encoder;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;

/**
 * A content coding of HTTP (RFC 9110 section 8.4.1), the smallest first. Brotli (RFC 7932) sees repetitions far apart,
 * such as three drawings of one line: a page with sheets is little more than half as large as with gzip.
 */
enum Coding {
    BROTLI("br") {
        /** Its encoder is native, and there may be none for this machine. */
        @Override
        boolean isOffered() {
            return Brotli4jLoader.isAvailable();
        }

        @Override
        byte[] compress(byte[] bytes) throws IOException {
            return Encoder.compress(bytes, Encoder.Parameters.create(QUALITY));
        }
    },
    GZIP("gzip") {
        @Override
        boolean isOffered() {
            return true;
        }

        @Override
        byte[] compress(byte[] bytes) throws IOException {
            var out = new ByteArrayOutputStream();
            try (var gzip = new GZIPOutputStream(out)) {
                gzip.write(bytes);
            }
            return out.toByteArray();
        }
    };

    /** About as quick as gzip: 11 would be a fifth smaller and take a hundred times as long. */
    private static final int QUALITY = 5;

    private final String token;
    private final Pattern accepted;
    private final Pattern refused;

    Coding(String token) {
        this.token = token;
        this.accepted = Pattern.compile("(^|,)\\s*" + token + "\\s*(;|,|$)");
        this.refused = Pattern.compile("(^|,)\\s*" + token + "\\s*;\\s*q=0(\\.0*)?\\s*(,|$)");
    }

    abstract boolean isOffered();

    abstract byte[] compress(byte[] bytes) throws IOException;

    byte[] of(byte[] bytes) {
        try {
            return compress(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e); // nothing is read or written but memory
        }
    }

    /** Its name in headers. */
    String token() {
        return token;
    }

    /** Whether who sends this Accept-Encoding reads it; a weight of 0 means "not acceptable" (section 12.5.3). */
    boolean isReadBy(String acceptEncoding) {
        return accepted.matcher(acceptEncoding).find()
                && !refused.matcher(acceptEncoding).find();
    }
}
