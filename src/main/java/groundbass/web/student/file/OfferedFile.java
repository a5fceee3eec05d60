package groundbass.web.student.file;

import groundbass.audience.download.ReleasedFile;
import groundbass.catalog.episode.EpisodeId;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;

/**
 * A file that readers may have, to take home or on the page: of a release that is or was out, and meant for them.
 *
 * @param stem begins the names of what is taken home, so that two lessons' sheets do not meet under one name
 */
public record OfferedFile(ReleaseId release, EpisodeId episode, String stem, ReleaseFile file) {
    public static OfferedFile of(Release release, ReleaseFile file) {
        return new OfferedFile(release.id(), release.episode(), release.spec().fileStem(), file);
    }

    ReleasedFile released() {
        return new ReleasedFile(release.value(), episode, file.name(), file.size());
    }

    /** What the reader's computer is asked to call it. */
    public String downloadName() {
        return file.role().isBundle() ? file.name() : stem + "-" + file.name();
    }

    /** Whether a browser can show it. */
    boolean readable() {
        return file.role() == FileRole.SHEET;
    }

    /** Whether its release keeps it for good. */
    boolean stays() {
        return file.role() != FileRole.ON_REQUEST;
    }

    public boolean playable() {
        return file.role().isPlayed();
    }

    public boolean offered() {
        return file.role().isOffered();
    }
}
