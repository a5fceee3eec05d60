package groundbass.release;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.identity.Sha256;
import groundbass.release.zip.ZipPiece;
import groundbass.store.Blobs;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.SequenceInputStream;
import java.io.UncheckedIOException;
import java.security.DigestOutputStream;
import java.util.Enumeration;
import java.util.List;

/** The zips of releases that are put together while they are sent: what lies between their files, and what these are. */
public final class Bundles {
    private static final String MEDIA_TYPE = "application/zip";
    /** A few thousand bytes each. */
    private static final int MOST_KNOWN = 200;

    private final Releases releases;
    private final Blobs blobs;
    private final Cache<ReleaseId, List<ZipPiece>> known =
            Caffeine.newBuilder().maximumSize(MOST_KNOWN).build();

    public Bundles(Releases releases, Blobs blobs) {
        this.releases = releases;
        this.blobs = blobs;
    }

    /**
     * All bytes of a release's zip. What lies between its files is remembered for a while: it takes reading all of them.
     *
     * @throws IOException where one of its files is gone or damaged
     * @throws IllegalStateException where this program would put another zip together than the one that was promised
     */
    public List<ZipPiece> pieces(ReleaseId id, ReleaseFile zip) throws IOException {
        try {
            return known.get(id, unknown -> read(unknown, zip)); // who asks meanwhile waits for whoever reads
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private List<ZipPiece> read(ReleaseId id, ReleaseFile zip) {
        try {
            return promised(id, zip);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private List<ZipPiece> promised(ReleaseId id, ReleaseFile zip) throws IOException {
        var pieces = Bundle.pieces(
                releases.find(id).orElseThrow().spec(),
                Bundle.content(releases.files().of(id)),
                blobs);
        long size = pieces.stream().mapToLong(ZipPiece::size).sum();
        if (size != zip.size()) {
            throw new IllegalStateException(
                    "the zip of release " + id + " would have " + size + " bytes instead of " + zip.size());
        }
        return pieces;
    }

    /**
     * The bytes of a release's bundle from the first to the last, whether it is kept or put together as it is read.
     *
     * @throws IOException where it, or one of its files, is gone or damaged; the stream throws an
     *     {@link UncheckedIOException} where that happens while it is read
     */
    public InputStream open(ReleaseId id, ReleaseFile bundle) throws IOException {
        if (bundle.role().isStored()) {
            return blobs.open(bundle.sha256());
        }
        var pieces = pieces(id, bundle).iterator();
        return new SequenceInputStream(new Enumeration<>() {
            @Override
            public boolean hasMoreElements() {
                return pieces.hasNext();
            }

            @Override
            public InputStream nextElement() {
                return opened(pieces.next());
            }
        });
    }

    private InputStream opened(ZipPiece piece) {
        try {
            return piece instanceof ZipPiece.Content content
                    ? blobs.open(content.sha256())
                    : new ByteArrayInputStream(((ZipPiece.Head) piece).bytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * The zip of all these files, as a file of their release; nothing is kept.
     *
     * @throws IOException where one of its files is gone or damaged
     */
    public static ReleaseFile of(BuildSpec spec, List<ReleaseFile> files, Blobs blobs) throws IOException {
        var digest = Sha256.digest();
        long size = 0;
        for (var piece : Bundle.pieces(spec, Bundle.content(files), blobs)) {
            size += piece.size();
            if (piece instanceof ZipPiece.Head head) {
                digest.update(head.bytes());
            } else if (piece instanceof ZipPiece.Content content) {
                try (var in = blobs.open(content.sha256())) {
                    in.transferTo(new DigestOutputStream(OutputStream.nullOutputStream(), digest));
                }
            }
        }
        return new ReleaseFile(spec.fileStem() + ".zip", FileRole.ZIP, MEDIA_TYPE, size, Sha256.finish(digest));
    }
}
