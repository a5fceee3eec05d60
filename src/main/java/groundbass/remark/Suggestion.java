package groundbass.remark;

import groundbass.text.Message;

/** Something that would put right what a remark is about. */
public interface Suggestion {
    /** What a button says: what would stand there, as it is typed. */
    Message label();
}
