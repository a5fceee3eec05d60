package groundbass.audience.download;

import groundbass.audience.download.Visits.Visit;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Download records. {@link #begin} returns when the row is committed and before the first byte goes; afterwards exactly
 * one of {@link #sent}, {@link #brokenOff} or {@link #handedOver} says what became of that request. Nobody waits for
 * these: they are committed a few milliseconds later, together with others, so that of a process killed in between a
 * download stays that was begun and is taken for broken off. The ranges of one download are one row. Thread-safe.
 */
public final class Downloads implements AutoCloseable {
    private static final Logger log = LoggerFactory.getLogger(Downloads.class);

    /** Without a token, requests of one reader for one file belong together for so long. */
    static final Duration JOINED_FOR = Duration.ofHours(1);
    /** A token joins for so long, and the second request of an anonymous visitor is not counted again. */
    static final Duration SAME_VISIT = Duration.ofHours(24);
    /** How far before the last sweep the next one looks: longer than any download lasts. */
    private static final Duration LOOKS_BACK = Duration.ofDays(3);
    /** Nothing heard for so long: broken off. */
    static final Duration PATIENCE = Duration.ofHours(1);

    private final Jdbi jdbi;
    private final GroupCommit commits;
    private final DownloadToken tokens;
    private final VisitorKey visitors;
    private final Visits visits = new Visits();
    private final Clock clock;
    /** Until when everything has been swept; at first, nothing has. */
    private volatile Instant swept = Instant.EPOCH;

    public Downloads(Jdbi jdbi, DownloadToken tokens, VisitorKey visitors, Clock clock) {
        this.jdbi = jdbi;
        this.commits = new GroupCommit(jdbi);
        this.tokens = tokens;
        this.visitors = visitors;
        this.clock = clock;
    }

    /** Writes the row of a download, or finds the one that this request continues. Committed on return. */
    public StartedDownload begin(FileRequest request) {
        Optional<Visit> visit = Visit.of(request, visitors);
        DownloadId id = commits.run(handle -> record(handle, request, visit));
        return new StartedDownload(id, tokens.sign(id));
    }

    /** All that the request asked for was sent. Complete if no byte of the file is missing now. */
    public void sent(DownloadId id, ByteSpan span) {
        advance(id, span, DownloadState.STARTED);
    }

    /** The reader went away; {@code span} is what was sent until then. */
    public void brokenOff(DownloadId id, ByteSpan span) {
        advance(id, span, DownloadState.BROKEN_OFF);
    }

    /** A front server sends the file. */
    public void handedOver(DownloadId id) {
        later(id, handle -> DownloadRows.touch(handle, id, DownloadState.HANDED_OVER, clock.instant()));
    }

    /** Returns when everything told so far is committed: before the program ends, or before somebody counts. */
    public void settle() {
        commits.run(handle -> true);
    }

    /** Settles. What comes later is still recorded, if the database is open. */
    @Override
    public void close() {
        settle();
    }

    public Optional<Download> find(DownloadId id) {
        return jdbi.withHandle(handle -> DownloadRows.find(handle, id));
    }

    /**
     * Destroys what could still tell one anonymous visitor from another after a day. That is in the memory of each server,
     * so each runs this for itself, every few minutes.
     */
    public void forgetVisitors() {
        visitors.destroyIfOld();
        visits.forget(clock.instant().minus(SAME_VISIT));
    }

    /**
     * Closes downloads that nothing was heard of for an hour. To be run every few minutes, on any server; idempotent.
     * Returns how many were closed.
     */
    public int sweep() {
        Instant now = clock.instant();
        Instant from = swept.equals(Instant.EPOCH) ? swept : swept.minus(LOOKS_BACK);
        int closed = jdbi.inTransaction(handle -> DownloadRows.breakOffSilent(handle, from, now.minus(PATIENCE)));
        swept = now;
        return closed;
    }

    private DownloadId record(Handle handle, FileRequest request, Optional<Visit> visit) {
        Instant now = clock.instant();
        Optional<Download> earlier = earlier(handle, request, visit, now.minus(SAME_VISIT));
        return byToken(handle, request, now)
                .or(() -> earlier.filter(download -> download.startedAt().isAfter(now.minus(JOINED_FOR))))
                .filter(download -> !(request.whole() && download.state().isOver()))
                .map(download -> resume(handle, download))
                .orElseGet(() -> insert(handle, request, visit, earlier.isPresent()));
    }

    /** Of what is remembered only what was committed counts: a transaction may have failed after the memory was made. */
    private Optional<Download> earlier(Handle handle, FileRequest request, Optional<Visit> visit, Instant since) {
        return visit.isPresent()
                ? visit.flatMap(each -> visits.latest(each, since)).flatMap(id -> DownloadRows.find(handle, id))
                : request.requester().student().flatMap(id -> DownloadRows.latest(handle, id, request.file(), since));
    }

    private Optional<Download> byToken(Handle handle, FileRequest request, Instant now) {
        return request.token()
                .flatMap(tokens::verify)
                .flatMap(id -> DownloadRows.find(handle, id))
                .filter(download -> isOf(request, download, now));
    }

    /** A token joins only what it was given for: this file, this reader, this day. */
    private static boolean isOf(FileRequest request, Download download, Instant now) {
        return download.file().release().equals(request.file().release())
                && download.file().name().equals(request.file().name())
                && download.student().equals(request.requester().student())
                && download.startedAt().isAfter(now.minus(SAME_VISIT));
    }

    private DownloadId resume(Handle handle, Download download) {
        DownloadState state = download.state().isOver() ? download.state() : DownloadState.STARTED;
        DownloadRows.touch(handle, download.id(), state, clock.instant());
        return download.id();
    }

    private DownloadId insert(Handle handle, FileRequest request, Optional<Visit> visit, boolean seenToday) {
        Instant now = clock.instant();
        var download = new Download(
                DownloadId.next(now),
                request.file(),
                request.requester().student(),
                now,
                now,
                DownloadState.STARTED,
                0,
                request.requester().isRobot(),
                request.requester() instanceof Requester.AtTheDesk,
                visit.isPresent() && seenToday);
        DownloadRows.insert(handle, download);
        visit.ifPresent(each -> visits.remember(each, download.id(), now));
        return download.id();
    }

    private void advance(DownloadId id, ByteSpan span, DownloadState otherwise) {
        later(id, handle -> {
            if (!sentAtOnce(handle, id, span)) sentInParts(handle, id, span, otherwise);
        });
    }

    private void later(DownloadId id, Consumer<Handle> work) {
        commits.later(work, why -> log.warn("The end of download {} could not be recorded", id, why));
    }

    /** The usual case, in one statement. */
    private boolean sentAtOnce(Handle handle, DownloadId id, ByteSpan span) {
        return span.from() == 0 && DownloadRows.completeIfWhole(handle, id, span, clock.instant()) == 1;
    }

    private void sentInParts(Handle handle, DownloadId id, ByteSpan span, DownloadState otherwise) {
        DownloadRows.lock(handle, id)
                .map(progress -> progress.plus(span, otherwise))
                .ifPresent(progress -> DownloadRows.advance(handle, id, progress, span.length(), clock.instant()));
    }
}
