package groundbass.engraving.svg;

import groundbass.score.Passage;
import java.util.Optional;

/** What is said of each event of a drawing to somebody who moves through it. Engraving knows no language. */
public interface EventWords {
    /** Where it begins as players count, {@code 2 e}; empty where nobody has a word for it, inside a tuplet. */
    Optional<String> count(Passage event);

    /** What the bars of a system are called. */
    String bars(Passage system);

    /** Where it is and what is played, in one line. */
    String words(Passage event);
}
