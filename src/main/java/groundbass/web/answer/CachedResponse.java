package groundbass.web.answer;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.zip.GZIPOutputStream;

/**
 * A whole answer kept in memory, plain and compressed, with its tag: an asset, or a page that is the same for every
 * reader of a language. Immutable by agreement: the arrays are never handed out. Thread-safe.
 */
public final class CachedResponse {
    /** For a version named in the address: it never changes. */
    public static final String FOR_GOOD = "public, max-age=31536000, immutable";

    /** May be kept by anyone, but is asked for again each time; the answer is then mostly 304. */
    public static final String ASK_AGAIN = "public, no-cache";

    // below this, headers and the extra decoding cost more than the bytes saved
    private static final int WORTH_COMPRESSING = 1024;
    private static final int OVERHEAD = 1024; // the objects around the bytes, and the key under which they are kept
    private static final Pattern REFUSES_GZIP = Pattern.compile("gzip\\s*;\\s*q=0(\\.0*)?\\s*(,|$)");

    private final byte[] plain;
    private final Optional<byte[]> compressed;
    private final String mediaType;
    private final EntityTag tag;
    // each coding is a representation of its own and needs its own strong tag (RFC 9110 section 8.8.3.3)
    private final EntityTag compressedTag;

    private CachedResponse(byte[] plain, Optional<byte[]> compressed, String mediaType) {
        this.plain = plain;
        this.compressed = compressed;
        this.mediaType = mediaType;
        this.tag = EntityTag.ofContent(plain);
        this.compressedTag = new EntityTag(tag.opaque() + "-gzip");
    }

    public static CachedResponse of(byte[] bytes, String mediaType) {
        Objects.requireNonNull(mediaType);
        boolean worth = bytes.length >= WORTH_COMPRESSING && compressible(mediaType);
        return new CachedResponse(bytes.clone(), worth ? Optional.of(gzip(bytes)) : Optional.empty(), mediaType);
    }

    /** About how many bytes of memory it takes. */
    public int size() {
        return OVERHEAD + plain.length + compressed.map(bytes -> bytes.length).orElse(0);
    }

    /** A short name of the content, for an address. */
    public String version() {
        return tag.opaque().substring(0, 12);
    }

    public EntityTag tag() {
        return tag;
    }

    /** Answers with these bytes, or with 304 where the asker has them already. */
    public void send(Context ctx, String cacheControl) {
        boolean squeeze = compressed.isPresent() && acceptsGzip(ctx);
        var sent = squeeze ? compressedTag : tag;
        ctx.header("Cache-Control", cacheControl).header("ETag", sent.toString());
        if (compressed.isPresent()) {
            Vary.on(ctx, "Accept-Encoding");
        }
        if (sent.namedIn(Optional.ofNullable(ctx.header("If-None-Match")))) {
            ctx.status(HttpStatus.NOT_MODIFIED);
            return;
        }
        write(ctx, squeeze);
    }

    private void write(Context ctx, boolean squeeze) {
        ctx.disableCompression().contentType(mediaType);
        if (squeeze) {
            ctx.header("Content-Encoding", "gzip");
        }
        byte[] body = squeeze ? compressed.orElseThrow() : plain;
        ctx.res().setContentLength(body.length);
        ctx.result(body);
    }

    private static boolean acceptsGzip(Context ctx) {
        String accepted = ctx.header("Accept-Encoding");
        return accepted != null
                && accepted.contains("gzip")
                && !REFUSES_GZIP.matcher(accepted).find();
    }

    private static boolean compressible(String mediaType) {
        return mediaType.startsWith("text/")
                || mediaType.startsWith("image/svg")
                || mediaType.startsWith("font/ttf")
                || mediaType.contains("json")
                || mediaType.contains("xml");
    }

    private static byte[] gzip(byte[] bytes) {
        var out = new ByteArrayOutputStream();
        try (var gzip = new GZIPOutputStream(out)) {
            gzip.write(bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }
}
