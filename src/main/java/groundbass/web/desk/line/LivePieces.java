package groundbass.web.desk.line;

import groundbass.web.desk.access.DeskJson;
import io.javalin.http.Context;
import java.io.IOException;
import java.io.OutputStream;
import java.util.Optional;
import java.util.zip.GZIPOutputStream;

/**
 * An answer that goes out piece by piece, each a line of JSON, as soon as it is there; packed here where the browser
 * unpacks, since the server's own packing holds back what is not whole.
 */
final class LivePieces implements AutoCloseable {
    private static final int BUFFER = 8192;

    private final OutputStream out;

    private LivePieces(OutputStream out) {
        this.out = out;
    }

    /** Begins the answer; from here on nothing else can be answered. */
    static LivePieces begin(Context ctx) throws IOException {
        ctx.disableCompression();
        ctx.header("Cache-Control", "no-store").contentType("application/x-ndjson");
        var raw = ctx.res().getOutputStream();
        if (!Optional.ofNullable(ctx.header("Accept-Encoding")).orElse("").contains("gzip")) {
            return new LivePieces(raw);
        }
        ctx.header("Content-Encoding", "gzip").header("Vary", "Accept-Encoding");
        return new LivePieces(new GZIPOutputStream(raw, BUFFER, true));
    }

    void send(Record piece) throws IOException {
        out.write(DeskJson.write(piece));
        out.write('\n');
        out.flush();
    }

    @Override
    public void close() throws IOException {
        out.close();
    }
}
