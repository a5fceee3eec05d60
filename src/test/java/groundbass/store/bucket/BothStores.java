package groundbass.store.bucket;

import groundbass.identity.Sha256;
import groundbass.store.BlobFolder;
import groundbass.store.BlobStore;
import groundbass.store.SettableClock;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.extension.ExtensionContext;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.ArgumentsProvider;
import org.junit.jupiter.params.support.ParameterDeclarations;
import software.amazon.awssdk.core.sync.RequestBody;

/** Runs a parameterised test on a folder and on a bucket, each fresh. */
final class BothStores implements ArgumentsProvider {
    /** A store, and what a test does to it from outside. */
    interface Store {
        BlobStore blobs();

        SettableClock clock();

        /** The same files as another process sees them. */
        BlobStore again() throws IOException;

        /** Writes other bytes in the place of a file, or none. */
        void spoil(Sha256 sha256, byte[] bytes) throws IOException;

        void remove(Sha256 sha256) throws IOException;
    }

    @Override
    public Stream<? extends Arguments> provideArguments(ParameterDeclarations parameters, ExtensionContext context)
            throws IOException {
        return Stream.of(Arguments.of(Named.of("folder", folder())), Arguments.of(Named.of("bucket", bucket())));
    }

    private static Store folder() throws IOException {
        Path folder = Files.createTempDirectory("groundbass-files");
        var clock = SettableClock.at(Instant.now());
        return new InFolder(folder, clock, new BlobFolder(folder, clock));
    }

    private static Store bucket() throws IOException {
        var name = ObjectServer.get().freshBucket();
        var clock = SettableClock.at(Instant.now()); // the server's own is the machine's
        return new InBucket(name, clock, InBucket.open(name, clock));
    }

    private record InFolder(Path folder, SettableClock clock, BlobFolder blobs) implements Store {
        @Override
        public BlobStore again() throws IOException {
            return new BlobFolder(folder, clock);
        }

        private Path place(Sha256 sha256) {
            return folder.resolve(sha256.hex().substring(0, 2)).resolve(sha256.hex());
        }

        @Override
        public void spoil(Sha256 sha256, byte[] bytes) throws IOException {
            Files.write(place(sha256), bytes);
        }

        @Override
        public void remove(Sha256 sha256) throws IOException {
            Files.delete(place(sha256));
        }
    }

    private record InBucket(BucketName name, SettableClock clock, BlobBucket blobs) implements Store {
        static BlobBucket open(BucketName name, SettableClock clock) throws IOException {
            return BlobBucket.open(name, new FileTurns(null, false), clock);
        }

        @Override
        public BlobStore again() throws IOException {
            return open(name, clock);
        }

        @Override
        public void spoil(Sha256 sha256, byte[] bytes) {
            ObjectServer.get()
                    .client()
                    .putObject(
                            request -> request.bucket(name.bucket()).key(name.prefix() + BlobBucket.key(sha256)),
                            RequestBody.fromBytes(bytes));
        }

        @Override
        public void remove(Sha256 sha256) {
            ObjectServer.get().client().deleteObject(request -> request.bucket(name.bucket())
                    .key(name.prefix() + BlobBucket.key(sha256)));
        }
    }
}
