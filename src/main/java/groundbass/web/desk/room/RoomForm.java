package groundbass.web.desk.room;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import java.util.function.UnaryOperator;

/** What was typed in a room, right or wrong. */
@FunctionalInterface
public interface RoomForm {
    /** Looks up whatever it names, and then says it in place of what a document said in this room; all else stays. */
    UnaryOperator<EpisodeDocument> change(Episode episode);
}
