package groundbass.store.bucket;

import groundbass.store.FilesAway;
import java.io.IOException;
import java.io.InputStream;
import software.amazon.awssdk.core.ResponseInputStream;
import software.amazon.awssdk.core.exception.SdkClientException;

/** An object while it is read: what is left of it is not fetched where its reader has had enough. */
final class StoredStream extends InputStream {
    private final ResponseInputStream<?> in;
    private final String place;
    private boolean ended;

    StoredStream(ResponseInputStream<?> in, String place) {
        this.in = in;
        this.place = place;
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
        try {
            int read = in.read(into, from, most);
            ended |= read < 0;
            return read;
        } catch (SdkClientException e) {
            throw new FilesAway(place, "the object store broke off: " + e.getMessage());
        }
    }

    @Override
    public void close() throws IOException {
        if (ended) {
            in.close();
        } else {
            in.abort(); // to close would fetch the rest
        }
    }
}
