package groundbass.archive.file;

import groundbass.text.Message;

/** An archive of a program newer than this one: nothing in it is damaged, and nothing can be read. */
public final class LaterFormat extends DamagedFile {
    private static final long serialVersionUID = 1L;

    public LaterFormat() {
        super("", Message.of("archive.problem.later"));
    }
}
