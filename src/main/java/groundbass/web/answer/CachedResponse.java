package groundbass.web.answer;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

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

    private final byte[] plain;
    private final EntityTag tag;
    private final String mediaType;
    private final Map<Coding, Coded> coded; // the smallest first

    /** Each coding is a representation of its own and needs its own strong tag (RFC 9110 section 8.8.3.3). */
    private record Coded(byte[] bytes, EntityTag tag) {}

    private CachedResponse(byte[] plain, String mediaType, boolean compressed) {
        this.plain = plain;
        this.mediaType = MediaTypes.encoded(mediaType);
        this.tag = EntityTag.ofContent(plain);
        this.coded = new EnumMap<>(Coding.class);
        if (compressed) {
            for (Coding coding : Coding.values()) {
                if (coding.isOffered()) {
                    var ownTag = new EntityTag(tag.opaque() + "-" + coding.token());
                    coded.put(coding, new Coded(coding.of(plain), ownTag));
                }
            }
        }
    }

    public static CachedResponse of(byte[] bytes, String mediaType) {
        Objects.requireNonNull(mediaType);
        return new CachedResponse(
                bytes.clone(), mediaType, bytes.length >= WORTH_COMPRESSING && compressible(mediaType));
    }

    /** About how many bytes of memory it takes. */
    public int size() {
        int ofCodings =
                coded.values().stream().mapToInt(one -> one.bytes().length).sum();
        return OVERHEAD + plain.length + ofCodings;
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
        var coding = codingFor(ctx);
        var sent = coding.map(coded::get).orElse(new Coded(plain, tag));
        ctx.header("Cache-Control", cacheControl).header("ETag", sent.tag().toString());
        if (!coded.isEmpty()) {
            Vary.on(ctx, "Accept-Encoding");
        }
        if (sent.tag().namedIn(Optional.ofNullable(ctx.header("If-None-Match")))) {
            ctx.status(HttpStatus.NOT_MODIFIED);
            return;
        }
        ctx.disableCompression().contentType(mediaType);
        coding.ifPresent(one -> ctx.header("Content-Encoding", one.token()));
        ctx.res().setContentLength(sent.bytes().length);
        ctx.result(sent.bytes());
    }

    private Optional<Coding> codingFor(Context ctx) {
        return Optional.ofNullable(ctx.header("Accept-Encoding")).flatMap(accepted -> coded.keySet().stream()
                .filter(coding -> coding.isReadBy(accepted))
                .findFirst());
    }

    private static boolean compressible(String mediaType) {
        return mediaType.startsWith("text/")
                || mediaType.startsWith("image/svg")
                || mediaType.contains("json")
                || mediaType.contains("xml");
    }
}
