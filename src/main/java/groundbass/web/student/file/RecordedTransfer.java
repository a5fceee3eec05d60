package groundbass.web.student.file;

import groundbass.audience.download.ByteSpan;
import groundbass.audience.download.DownloadId;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.web.answer.ByteRange;
import groundbass.web.answer.Transfer;
import io.javalin.http.Context;

/** Keeps the record of one request for a file. Used by one thread. */
final class RecordedTransfer implements Transfer {
    private final Downloads downloads;
    private final ReleasedFile file;
    private final Requester requester;
    private final TakeCookie cookie;
    private final Context ctx;

    /** What {@link #starting} found out; before it there is nothing. */
    private record Under(DownloadId id, long from) {}

    private Under under;

    RecordedTransfer(Downloads downloads, ReleasedFile file, Requester requester, TakeCookie cookie, Context ctx) {
        this.downloads = downloads;
        this.file = file;
        this.requester = requester;
        this.cookie = cookie;
        this.ctx = ctx;
    }

    /** The row is committed and the cookie set before the first byte. */
    @Override
    public void starting(ByteRange range) {
        boolean whole = !(range instanceof ByteRange.Part);
        long from = range instanceof ByteRange.Part part ? part.first() : 0;
        var begun = downloads.begin(new FileRequest(file, requester, whole, cookie.read(ctx)));
        cookie.set(ctx, begun.token());
        under = new Under(begun.id(), from);
    }

    @Override
    public void completed(long sent) {
        downloads.sent(under.id(), ByteSpan.of(under.from(), sent));
    }

    @Override
    public void brokenOff(long sent) {
        downloads.brokenOff(under.id(), ByteSpan.of(under.from(), sent));
    }

    @Override
    public void handedOver() {
        downloads.handedOver(under.id());
    }
}
