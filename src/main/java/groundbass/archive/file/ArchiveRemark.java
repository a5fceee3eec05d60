package groundbass.archive.file;

import groundbass.text.Message;

/**
 * Something to be told of what was brought in.
 *
 * @param where the file or folder, by its name in the archive
 */
public record ArchiveRemark(String where, Message what) {
    public static ArchiveRemark of(String where, String key, Object... args) {
        return new ArchiveRemark(where, Message.of(key, args));
    }
}
