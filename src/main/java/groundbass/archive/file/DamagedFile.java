package groundbass.archive.file;

import groundbass.text.Message;

/** Why a file of an archive, or all of it, cannot be read, in a sentence for whoever brings it. */
public class DamagedFile extends Exception {
    private static final long serialVersionUID = 1L;

    private final String where;
    private final transient Message why;

    DamagedFile(String where, Message why) {
        super(where + ": " + why.key());
        this.where = where;
        this.why = why;
    }

    public static DamagedFile of(String key, Object... args) {
        return new DamagedFile("", Message.of(key, args));
    }

    /** The same, of a file, where nobody has said yet which. */
    public DamagedFile in(String file) {
        return where.isEmpty() ? new DamagedFile(file, why) : this;
    }

    /** @param usual where nobody has said which file it is */
    public ArchiveRemark finding(String usual) {
        return new ArchiveRemark(where.isEmpty() ? usual : where, why);
    }

    /** The same, of a file that is named as its lesson names it. */
    public ArchiveRemark finding(String folder, String usual) {
        return new ArchiveRemark(folder + "/" + (where.isEmpty() ? usual : where), why);
    }

    public Message why() {
        return why;
    }
}
