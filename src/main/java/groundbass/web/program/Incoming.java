package groundbass.web.program;

import groundbass.identity.Sha256;
import groundbass.store.temporary.Scratch;
import groundbass.text.Utf8;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.security.DigestOutputStream;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;

/** The body of a request, all of which has come. */
final class Incoming {
    /** The most bytes of a text or an object: as much as a form of the desk may have. */
    static final int MOST = 2_000_000;

    private static final int A_PIECE = 64 * 1024;

    private final Sha256 digest;
    private final Opening opening;

    private interface Opening {
        InputStream open() throws IOException;
    }

    private Incoming(Sha256 digest, Opening opening) {
        this.digest = digest;
        this.opening = opening;
    }

    /** Refuses with 415 (RFC 9110 section 15.5.16) what is not of this media type, and with 413 what is too long. */
    static byte[] bytes(Context ctx, String mediaType) throws IOException {
        demand(ctx, Set.of(mediaType));
        byte[] body = ctx.bodyInputStream().readNBytes(MOST + 1);
        if (body.length > MOST) {
            throw tooLarge(MOST);
        }
        return body;
    }

    /** Text; refuses with 400 what is no UTF-8. */
    static String text(Context ctx, String mediaType) throws IOException {
        String text = decoded(bytes(ctx, mediaType));
        demandText(text);
        return text;
    }

    /** Refuses with 400 what no database keeps as text: U+0000, and half of a surrogate pair (RFC 8259 section 8.2). */
    static void demandText(String text) {
        if (text.indexOf('\0') >= 0) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.nul");
        }
        if (!StandardCharsets.UTF_8.newEncoder().canEncode(text)) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.surrogate");
        }
    }

    private static String decoded(byte[] bytes) {
        return Utf8.read(bytes).orElseThrow(() -> Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.utf8"));
    }

    static Incoming json(Context ctx) throws IOException {
        byte[] body = bytes(ctx, Answers.JSON);
        return new Incoming(Sha256.of(body), () -> new ByteArrayInputStream(body));
    }

    /** Refuses a file that is of none of these media types or says that it is too long, before any of it has come. */
    static void demandFile(Context ctx, Set<String> mediaTypes, long most) {
        demand(ctx, mediaTypes);
        if (ctx.req().getContentLengthLong() > most) {
            throw tooLarge(most);
        }
    }

    /** A file, which is laid on disk until it has come whole. */
    static Incoming file(Context ctx, Scratch place, long most) throws IOException {
        var digest = Sha256.digest();
        long length = place.write(out -> copy(ctx.bodyInputStream(), new DigestOutputStream(out, digest), most));
        if (length > most) {
            throw tooLarge(most);
        }
        return new Incoming(Sha256.finish(digest), place::read);
    }

    /** Copies no more than a piece beyond the most. @return how many bytes */
    private static long copy(InputStream in, OutputStream out, long most) throws IOException {
        var piece = new byte[A_PIECE];
        long copied = 0;
        for (int read = in.read(piece); read >= 0 && copied <= most; read = in.read(piece)) {
            out.write(piece, 0, read);
            copied += read;
        }
        return copied;
    }

    private static Refusal tooLarge(long most) {
        return Refusal.of(HttpStatus.CONTENT_TOO_LARGE, "program.refused.large", most);
    }

    private static void demand(Context ctx, Set<String> mediaTypes) {
        String sent = Optional.ofNullable(ctx.contentType()).orElse("").toLowerCase(Locale.ROOT);
        String type = sent.replaceFirst(";.*", "").strip();
        // JSON has no such parameter (RFC 8259 section 11)
        boolean unicode = !type.startsWith("text/")
                || !sent.contains("charset")
                || sent.matches(".*charset\\s*=\\s*\"?utf-8\"?.*");
        if (!mediaTypes.contains(type) || !unicode) {
            String wanted = String.join(", ", mediaTypes.stream().sorted().toList());
            throw Refusal.of(HttpStatus.UNSUPPORTED_MEDIA_TYPE, "program.refused.type", wanted)
                    .with(ctx.method().name().equals("PATCH") ? "Accept-Patch" : "Accept", wanted);
        }
    }

    /** Of all its bytes. */
    Sha256 digest() {
        return digest;
    }

    InputStream open() throws IOException {
        return opening.open();
    }

    byte[] bytes() throws IOException {
        try (var in = open()) {
            return in.readAllBytes();
        }
    }
}
