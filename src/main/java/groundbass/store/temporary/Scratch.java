package groundbass.store.temporary;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.StandardOpenOption;

/** A file that holds something for a moment, and goes when it is closed. */
public final class Scratch implements AutoCloseable {
    private final FileChannel file;

    private Scratch(FileChannel file) {
        this.file = file;
    }

    public static Scratch open() throws IOException {
        return new Scratch(FileChannel.open(
                TemporaryFiles.file(),
                StandardOpenOption.READ,
                StandardOpenOption.WRITE,
                StandardOpenOption.DELETE_ON_CLOSE));
    }

    /** Writes into a stream, and has something to say of it. */
    public interface Writing<T> {
        T into(OutputStream out) throws IOException;
    }

    public <T> T write(Writing<T> writing) throws IOException {
        var out = new BufferedOutputStream(Channels.newOutputStream(file));
        T said = writing.into(out);
        out.flush();
        return said;
    }

    /** All that was written. */
    public void copyTo(OutputStream out) throws IOException {
        read().transferTo(out);
    }

    /** All that was written, from its beginning; one reads at a time. */
    public InputStream read() throws IOException {
        file.position(0);
        return Channels.newInputStream(file);
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
