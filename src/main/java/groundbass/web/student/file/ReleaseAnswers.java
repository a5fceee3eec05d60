package groundbass.web.student.file;

import groundbass.identity.Sha256;
import groundbass.release.Bundles;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.zip.ZipPiece;
import groundbass.store.Blobs;
import groundbass.web.answer.EntityTag;
import groundbass.web.answer.FileAnswer;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/** Any file of a release as an answer: as it is kept, or put together while it is sent. */
public final class ReleaseAnswers {
    /** No piece is asked for by itself, so that its tag is never read. */
    private static final EntityTag PART = new EntityTag("part");

    private final Blobs blobs;
    private final Bundles bundles;

    public ReleaseAnswers(Blobs blobs, Bundles bundles) {
        this.blobs = blobs;
        this.bundles = bundles;
    }

    /** @throws IOException where it, or a file that it is put together of, is gone or damaged */
    public FileAnswer of(ReleaseId release, ReleaseFile file) throws IOException {
        return file.role().isStored()
                ? kept(file.sha256(), file.mediaType())
                : FileAnswer.joined(
                        pieces(release, file),
                        file.mediaType(),
                        new EntityTag(file.sha256().hex()));
    }

    private List<FileAnswer> pieces(ReleaseId release, ReleaseFile zip) throws IOException {
        var answers = new ArrayList<FileAnswer>();
        for (var piece : bundles.pieces(release, zip)) {
            if (piece instanceof ZipPiece.Head head) {
                answers.add(FileAnswer.of(head.bytes(), zip.mediaType(), PART));
            } else if (piece instanceof ZipPiece.Content content) {
                answers.add(kept(content.sha256(), zip.mediaType()));
            }
        }
        return answers;
    }

    private FileAnswer kept(Sha256 sha256, String mediaType) throws IOException {
        return FileAnswer.of(blobs, sha256, mediaType);
    }
}
