package groundbass.web.desk.room;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import io.javalin.http.Context;
import java.util.List;

/** One room of a lesson: what it says, how its form is read, how it is shown. */
public interface RoomPage {
    Room room();

    /** Its address, below that of its lesson. */
    default String way() {
        return room().way();
    }

    /** What a document says in this room, field by field. */
    List<RoomField> fields(EpisodeDocument document);

    /** Names what a document says in this room. */
    default String base(EpisodeDocument document) {
        return RoomField.digest(fields(document));
    }

    /** What was sent; nothing is looked up yet. */
    RoomForm read(Context ctx);

    /** Shows what a document says in this room, saved or not. */
    void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document);
}
