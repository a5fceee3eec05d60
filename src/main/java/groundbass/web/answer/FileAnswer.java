package groundbass.web.answer;

import groundbass.identity.Sha256;
import groundbass.store.Blobs;
import groundbass.store.fault.FilesAway;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.slf4j.event.Level;

/**
 * Answers with a file or a part of it (RFC 9110: validators in section 13, ranges in section 14): 200, 206, 304 or 416.
 * Made with {@link #of}, refined with the {@code with} methods, sent once per request.
 */
public record FileAnswer(
        FileBody body,
        String mediaType,
        EntityTag tag,
        Optional<String> disposition,
        String cacheControl,
        Transfer transfer,
        Optional<HandOver> handOver) {
    private static final Logger log = LoggerFactory.getLogger(FileAnswer.class);
    private static final Pattern NOT_PLAIN = Pattern.compile("[^A-Za-z0-9._ -]");
    private static final String MAY_NOT_BE_SHARED = "private, no-cache";

    public FileAnswer {
        Objects.requireNonNull(body);
        Objects.requireNonNull(mediaType);
        Objects.requireNonNull(tag);
        Objects.requireNonNull(disposition);
        Objects.requireNonNull(cacheControl);
        Objects.requireNonNull(transfer);
        Objects.requireNonNull(handOver);
    }

    /**
     * A file that is kept by its content, whose digest is its tag.
     *
     * @throws java.nio.file.NoSuchFileException where no such file is kept
     * @throws groundbass.store.DamagedFileException where it is no longer what the digest says
     */
    public static FileAnswer of(Blobs blobs, Sha256 digest, String mediaType) throws IOException {
        return of(stored(blobs, digest), mediaType, new EntityTag(digest.hex()));
    }

    static FileBody stored(Blobs blobs, Sha256 digest) throws IOException {
        return new FileBody.Stored(blobs, digest, blobs.length(digest));
    }

    /** {@code bytes} are shared, not copied: the caller does not change them. */
    public static FileAnswer of(byte[] bytes, String mediaType, EntityTag tag) {
        return of(new FileBody.InMemory(bytes), mediaType, tag);
    }

    /** Files and bytes one after the other as one. */
    public static FileAnswer joined(List<FileAnswer> parts, String mediaType, EntityTag tag) {
        return of(new FileBody.Joined(parts.stream().map(FileAnswer::body).toList()), mediaType, tag);
    }

    private static FileAnswer of(FileBody body, String mediaType, EntityTag tag) {
        return new FileAnswer(
                body, mediaType, tag, Optional.empty(), MAY_NOT_BE_SHARED, Transfer.UNOBSERVED, Optional.empty());
    }

    /** To be saved under that name instead of shown. */
    public FileAnswer withDownloadName(String name) {
        return new FileAnswer(
                body, mediaType, tag, Optional.of("attachment; " + named(name)), cacheControl, transfer, handOver);
    }

    /** To be shown, and called so where it is saved after that. */
    public FileAnswer withShownName(String name) {
        return new FileAnswer(
                body, mediaType, tag, Optional.of("inline; " + named(name)), cacheControl, transfer, handOver);
    }

    public FileAnswer withCacheControl(String value) {
        return new FileAnswer(body, mediaType, tag, disposition, value, transfer, handOver);
    }

    public FileAnswer withTransfer(Transfer observer) {
        return new FileAnswer(body, mediaType, tag, disposition, cacheControl, observer, handOver);
    }

    /** Lets somebody else send the file where there is somebody who can. */
    public FileAnswer withHandOver(Optional<HandOver> way) {
        return new FileAnswer(body, mediaType, tag, disposition, cacheControl, transfer, way);
    }

    /** Answers the request. Register the route for HEAD as well as GET ({@code Routes.get} does). */
    public void send(Context ctx) throws IOException {
        ctx.disableCompression(); // a compressed part has no honest byte positions
        if (tag.namedIn(header(ctx, "If-None-Match"))) {
            describe(ctx);
            ctx.status(HttpStatus.NOT_MODIFIED);
            return;
        }
        try (var opened = body.open()) {
            answer(ctx, opened);
        }
    }

    private void describe(Context ctx) {
        ctx.header("ETag", tag.toString()).header("Cache-Control", cacheControl).header("Accept-Ranges", "bytes");
    }

    private void answer(Context ctx, FileBody.Opened opened) throws IOException {
        var range = range(ctx, opened.size());
        var instead = instead(ctx);
        if (instead.isEmpty() && ctx.method().equals(HandlerType.GET)) {
            opened.begin(range instanceof ByteRange.Part part ? part.first() : 0);
        }
        if (instead.isPresent() && !(range instanceof ByteRange.Unsatisfiable)) {
            handOver(ctx, range, instead.get());
            return;
        }
        describeFile(ctx); // only now: where files are away this is no answer with a file
        if (range instanceof ByteRange.Unsatisfiable none) {
            ctx.status(HttpStatus.RANGE_NOT_SATISFIABLE).header("Content-Range", none.contentRange());
        } else if (range instanceof ByteRange.Part part) {
            ctx.status(HttpStatus.PARTIAL_CONTENT).header("Content-Range", part.contentRange());
            sendPart(ctx, opened, range, part.first(), part.length());
        } else {
            sendPart(ctx, opened, range, 0, opened.size());
        }
    }

    private void describeFile(Context ctx) {
        describe(ctx);
        disposition.ifPresent(value -> ctx.header("Content-Disposition", value));
    }

    private Optional<HandOver.Instead> instead(Context ctx) throws IOException {
        boolean able = handOver.isPresent() && ctx.method().equals(HandlerType.GET);
        return able && body instanceof FileBody.Stored stored
                ? handOver.get().instead(ctx, stored, MediaTypes.encoded(mediaType), disposition)
                : Optional.empty();
    }

    /** All that may fail comes first: an answer that tells of a fault must not name the file. */
    private void handOver(Context ctx, ByteRange range, HandOver.Instead instead) {
        transfer.starting(range);
        transfer.handedOver();
        if (instead.describes()) {
            describeFile(ctx);
            ctx.contentType(MediaTypes.encoded(mediaType));
        }
        ctx.status(instead.status());
        instead.headers().forEach(ctx::header);
    }

    /** Ranges are defined for GET alone (RFC 9110 section 14.2). */
    private ByteRange range(Context ctx, long size) {
        boolean asked = ctx.method().equals(HandlerType.GET) && tag.allowsRange(header(ctx, "If-Range"));
        return asked ? ByteRange.of(header(ctx, "Range"), size) : new ByteRange.Whole(size);
    }

    private void sendPart(Context ctx, FileBody.Opened opened, ByteRange range, long first, long count)
            throws IOException {
        ctx.contentType(MediaTypes.encoded(mediaType));
        ctx.res().setContentLengthLong(count);
        if (ctx.method().equals(HandlerType.HEAD)) {
            return;
        }
        transfer.starting(range);
        var chunks = new BodyStreamer();
        try {
            chunks.copy(opened, first, count, ctx.res().getOutputStream());
        } catch (IOException e) {
            // mostly a reader who closed the page; the length promised cannot be kept
            log.atLevel(e instanceof FilesAway ? Level.WARN : Level.DEBUG)
                    .setCause(e)
                    .log("broken off after {} of {} bytes", chunks.sent(), count);
            transfer.brokenOff(chunks.sent());
            if (!ctx.res().isCommitted()) {
                throw e; // nobody has seen anything of it
            }
            CutConnection.of(ctx);
            return;
        }
        transfer.completed(chunks.sent());
    }

    /** RFC 6266, with the name in UTF-8 as RFC 8187 writes it and a plain one for those who cannot read that. */
    private static String named(String name) {
        String plain = NOT_PLAIN.matcher(name).replaceAll("_");
        String exact = plain.equals(name) ? "" : "; filename*=UTF-8''" + encoded(name);
        return "filename=\"" + plain + "\"" + exact;
    }

    private static String encoded(String name) {
        var encoded = new StringBuilder();
        for (byte b : name.getBytes(StandardCharsets.UTF_8)) {
            boolean safe = b > 0 && (Character.isLetterOrDigit(b) || b == '.' || b == '_' || b == '-');
            encoded.append(safe ? String.valueOf((char) b) : "%%%02X".formatted(b & 0xff));
        }
        return encoded.toString();
    }

    private static Optional<String> header(Context ctx, String name) {
        return Optional.ofNullable(ctx.header(name));
    }
}
