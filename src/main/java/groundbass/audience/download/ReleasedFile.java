package groundbass.audience.download;

import groundbass.catalog.episode.EpisodeId;

/**
 * A file of a release, named by value.
 *
 * @param release the release's id
 * @param name the file's name within the release
 * @param size in bytes
 */
public record ReleasedFile(String release, EpisodeId episode, String name, long size) {
    private static final int LONGEST_NAME = 200;

    public ReleasedFile {
        if (release.isEmpty() || release.length() > 16) throw new IllegalArgumentException("not a release: " + release);
        if (name.isEmpty() || name.length() > LONGEST_NAME)
            throw new IllegalArgumentException("not a file name: " + name);
        if (size < 0) throw new IllegalArgumentException("a size is not negative: " + size);
    }
}
