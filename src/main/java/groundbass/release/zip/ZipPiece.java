package groundbass.release.zip;

import groundbass.identity.Sha256;

/** A stretch of a zip that is put together while it is sent. */
public sealed interface ZipPiece {
    /** How many bytes it has. */
    long size();

    /** What stands between files; nobody changes it. */
    @SuppressWarnings("ArrayRecordComponent")
    record Head(byte[] bytes) implements ZipPiece {
        @Override
        public long size() {
            return bytes.length;
        }
    }

    /** A stored file, as it is. */
    record Content(Sha256 sha256, long size) implements ZipPiece {}
}
