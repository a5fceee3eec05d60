package groundbass.web.desk.editor;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.line.LinePreview;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import io.javalin.http.Context;
import java.util.List;

/** The room of the line that the lesson is about. */
final class LineRoom implements RoomPage {
    private final DeskContext desk;
    private final LinePreviews previews;

    LineRoom(DeskContext desk, LinePreviews previews) {
        this.desk = desk;
        this.previews = previews;
    }

    @Override
    public Room room() {
        return Room.LINE;
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        return List.of(RoomField.of(
                "mainLine", "desk.editor.line.text", document.mainLine().text()));
    }

    @Override
    public RoomForm read(Context ctx) {
        String text = FormParameters.text(ctx, "mainLine");
        return episode -> before -> before.edit()
                .mainLine(new LineSource(before.mainLine().name(), text))
                .done();
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        String text = document.mainLine().text();
        var live = previews.of(ctx, episode, document, "mainLine", text);
        desk.pages().show(ctx, "desk/line", new View(room, text, live, LineExample.TEXT));
    }

    /** @param example a line that shows how lines are written */
    public record View(RoomView room, String text, LinePreview live, String example) {}
}
