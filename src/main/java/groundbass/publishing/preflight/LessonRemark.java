package groundbass.publishing.preflight;

import groundbass.identity.Sha256;
import groundbass.text.Message;
import java.nio.charset.StandardCharsets;
import java.util.stream.Collectors;

/**
 * Something that an educator should know before a lesson goes out.
 *
 * @param point at which of the checkpoints it is told
 * @param field where it is mended, named as in {@link groundbass.catalog.episode.DocumentCheck}; besides {@code walkthrough},
 *     {@code address}, {@code imprint}, {@code mail} and {@code release}, which are no part of the document's form
 * @param about what of the lesson it speaks of, without the place where it stands: the same remark on other notes is
 *     another remark
 * @param bar of the line that it speaks of; 0 where it speaks of none
 */
public record LessonRemark(Checkpoint point, Weight weight, String field, Message message, String about, int bar) {
    /** What a remark does to publishing. */
    public enum Weight {
        /** Nothing goes out before it is mended. */
        BLOCKS,
        /** Nothing goes out before the educator has said that it may stand. */
        ASKS,
        /** It is told, no more. */
        MENTIONS
    }

    LessonRemark(Checkpoint point, Weight weight, String field, Message message, String about) {
        this(point, weight, field, message, about, 0);
    }

    static LessonRemark blocks(Checkpoint point, String field, Message message) {
        return new LessonRemark(point, Weight.BLOCKS, field, message, text(message));
    }

    /** A message before its language is known, as a text that no other version writes otherwise. */
    static String text(Message message) {
        return message.args().stream()
                .map(arg -> arg instanceof Message part ? text(part) : String.valueOf(arg))
                .collect(Collectors.joining(", ", message.key() + "(", ")"));
    }

    /**
     * The same for the same remark on the same notes, wherever they stand. Rows keep it of what was accepted: what it is made
     * of must be texts of our own, never what the language makes of a record.
     */
    public String digest() {
        String said = field + "\n" + message.key() + "\n" + about;
        return Sha256.of(said.getBytes(StandardCharsets.UTF_8)).hex();
    }

    /** Whether nothing goes out before it is mended. */
    public boolean blocks() {
        return weight == Weight.BLOCKS;
    }

    /** Whether nothing goes out before it is mended or accepted. */
    public boolean asks() {
        return weight == Weight.ASKS;
    }
}
