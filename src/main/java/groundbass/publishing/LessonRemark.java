package groundbass.publishing;

import groundbass.identity.Sha256;
import groundbass.text.Message;
import java.nio.charset.StandardCharsets;

/**
 * Something that an educator should know before a lesson goes out.
 *
 * @param field where it is mended, named as in {@link groundbass.catalog.DocumentCheck}; besides {@code walkthrough},
 *     {@code address} and {@code imprint}, which are no part of the document's form
 * @param about what of the lesson it speaks of: the same remark on other notes is another remark
 */
public record LessonRemark(Weight weight, String field, Message message, String about) {
    /** What a remark does to publishing. */
    public enum Weight {
        /** Nothing goes out before it is mended. */
        BLOCKS,
        /** Nothing goes out before the educator has said that it may stand. */
        ASKS,
        /** It is told, no more. */
        MENTIONS
    }

    /** The same for the same remark on the same notes, wherever they stand. */
    public String digest() {
        String said = field + "\n" + message.key() + "\n" + about;
        return Sha256.of(said.getBytes(StandardCharsets.UTF_8)).hex();
    }

    boolean blocks() {
        return weight == Weight.BLOCKS;
    }

    boolean asks() {
        return weight == Weight.ASKS;
    }
}
