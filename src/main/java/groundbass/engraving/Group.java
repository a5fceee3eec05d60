package groundbass.engraving;

import groundbass.score.Passage;
import java.util.Optional;

/**
 * Marks that belong together.
 *
 * @param passage the music that they say, of systems and events
 */
public record Group(Role role, Optional<Passage> passage, Box box) {
    /** What a group is to somebody who has the page read out. */
    public enum Role {
        TITLE,
        PARAGRAPH,
        /** One run of text that leads elsewhere. */
        LINK,
        /** One system of music: a figure with its own words. */
        SYSTEM,
        /** What begins at one moment of a system. */
        EVENT,
        /** Page numbers and the like, which are not read out. */
        FURNITURE
    }
}
