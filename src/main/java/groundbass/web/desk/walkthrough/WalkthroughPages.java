package groundbass.web.desk.walkthrough;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.desk.walkthrough.WalkthroughView.Row;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/** The walkthrough on the desk, reworded step by step. */
public final class WalkthroughPages implements PageGroup, RoomPage {
    private final DeskContext desk;
    private final Rooms rooms;

    public WalkthroughPages(DeskContext desk, Rooms rooms) {
        this.desk = desk;
        this.rooms = rooms;
    }

    @Override
    public void addTo(Routes routes) {
        rooms.open(routes, this);
    }

    @Override
    public Room room() {
        return Room.WALKTHROUGH;
    }

    /** As the page shows them: a step without words of the educator's says what the program tells. */
    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        var told = WalkthroughText.of(document);
        var fields = new ArrayList<>(List.of(RoomField.of("naming", "desk.walkthrough.naming", told.naming())));
        for (var part : told.parts()) {
            part.lost().forEach(row -> fields.add(field("desk.walkthrough.lost.bar", row)));
            part.steps().forEach(row -> fields.add(field("desk.walkthrough.of-bar", row)));
        }
        return List.copyOf(fields);
    }

    private static RoomField field(String label, Row row) {
        return new RoomField(row.id(), Message.of(label, row.bar()), row.said());
    }

    /** What the educator wrote, and not what the program tells, which follows the line. */
    @Override
    public String base(EpisodeDocument document) {
        String words = document.walkthroughEdits().stream()
                .map(edit -> edit.line() + " " + edit.anchor() + " " + edit.bar() + " " + edit.sentence())
                .collect(Collectors.joining("\n"));
        return RoomField.digest(List.of(
                RoomField.of(
                        "naming", "desk.walkthrough.naming", document.settings().naming()),
                RoomField.of("said", "desk.room.walkthrough", words)));
    }

    @Override
    public RoomForm read(Context ctx) {
        return WalkthroughForm.read(ctx);
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        var view = desk.work(ctx, episode, () -> new WalkthroughView(room, WalkthroughText.of(document)));
        desk.pages().show(ctx, "desk/walkthrough", view);
    }
}
