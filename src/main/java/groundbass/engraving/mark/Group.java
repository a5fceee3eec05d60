package groundbass.engraving.mark;

import groundbass.score.Passage;
import java.util.Optional;

/**
 * Marks that belong together.
 *
 * @param passage the music that they say, of systems, events and annotations
 * @param piece which of a document's lines they belong to, from 0
 */
public record Group(Role role, Optional<Passage> passage, Box box, int piece) {
    public Group(Role role, Optional<Passage> passage, Box box) {
        this(role, passage, box, 0);
    }

    /** What a group is to somebody who has the page read out. */
    public enum Role {
        TITLE,
        PARAGRAPH,
        /** What stands over paragraphs. */
        HEADING,
        /** What stands over some of a heading's paragraphs. */
        SUBHEADING,
        /** One of several things that are listed. */
        ITEM,
        /** One run of text that leads elsewhere. */
        LINK,
        /** One system of music: a figure with its own words. */
        SYSTEM,
        /** A note, notes struck together, or a rest. */
        EVENT,
        /** What belongs to a stretch of a system and is no note: a chord name, a word over the staff. */
        ANNOTATION,
        /** Page numbers and the like, which are not read out. */
        FURNITURE
    }
}
