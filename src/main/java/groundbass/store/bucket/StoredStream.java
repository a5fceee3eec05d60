package groundbass.store.bucket;

import groundbass.store.fault.FilesAway;
import java.io.IOException;
import java.io.InputStream;
import software.amazon.awssdk.core.ResponseInputStream;
import software.amazon.awssdk.core.exception.SdkClientException;
import software.amazon.awssdk.services.s3.model.GetObjectResponse;

/**
 * An object while it is read: what is left of it is not fetched where its reader has had enough. A connection that ends
 * before all that was announced has come is a fault, since what is here is not the object then.
 */
final class StoredStream extends InputStream {
    private final ResponseInputStream<GetObjectResponse> in;
    private final String place;
    private long left;
    private boolean ended;

    StoredStream(ResponseInputStream<GetObjectResponse> in, String place) {
        this.in = in;
        this.place = place;
        var announced = in.response().contentLength();
        this.left = announced == null ? 0 : announced;
    }

    /** By which the store tells these bytes from others under the same name. */
    String tag() {
        return in.response().eTag();
    }

    @Override
    public int read() throws IOException {
        byte[] one = new byte[1];
        return read(one, 0, 1) < 0 ? -1 : one[0] & 0xff;
    }

    @Override
    public int read(byte[] into, int from, int most) throws IOException {
        int read = readSome(into, from, most);
        if (read >= 0) {
            left -= read;
        } else if (left > 0) {
            throw new FilesAway(place, "the object store broke off: " + left + " bytes of a file are missing");
        } else {
            ended = true;
        }
        return read;
    }

    private int readSome(byte[] into, int from, int most) throws IOException {
        try {
            return in.read(into, from, most);
        } catch (IOException | SdkClientException e) {
            var away = new FilesAway(place, "the object store broke off: " + e.getMessage());
            away.initCause(e);
            throw away;
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
