package groundbass.web.desk.publish;

import groundbass.publishing.Publisher;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.access.Reauthentication;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.stream.Stream;

/** Everything that is checked before a lesson goes out, on one page, each with the way to where it is mended. */
public final class PreflightPage implements PageGroup {
    private static final String WAY = "/preflight";
    private static final String PATH = DeskContext.EPISODE + WAY;
    private static final int MOST_ACCEPTED = 500;

    private final DeskContext desk;
    private final Rooms rooms;
    private final Reauthentication reauthentication;
    private final Publisher publisher;
    private final PublishingViews publishing;
    private final Clock clock;

    public PreflightPage(
            DeskContext desk,
            Rooms rooms,
            Reauthentication reauthentication,
            Publisher publisher,
            PublishingViews publishing,
            Clock clock) {
        this.desk = desk;
        this.rooms = rooms;
        this.reauthentication = reauthentication;
        this.publisher = publisher;
        this.publishing = publishing;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.post(PATH, Role.ANYONE, this::accept);
    }

    private void show(Context ctx) {
        var episode = desk.episode(ctx);
        var look = rooms.look(episode);
        look.tryLinks();
        var room = desk.work(desk.educator(ctx), () -> rooms.view(ctx, Room.PUBLISH, look));
        desk.pages().show(ctx, "desk/preflight", new View(room, publishing.troubles(look), clock.instant()));
    }

    /** Lets stand what the page showed, and says how the lesson stands then. */
    private void accept(Context ctx) {
        reauthentication.writer(ctx).ifPresent(who -> {
            publisher.accept(who, desk.episode(ctx, who).id(), accepted(ctx));
            Flash.say(ctx, "desk.preflight.accepted");
            ctx.redirect(DeskContext.path(ctx) + WAY, HttpStatus.SEE_OTHER);
        });
    }

    /** What a form says that its reader lets stand: what the page showed, and nothing that came up since. */
    static List<String> accepted(Context ctx) {
        return Stream.of(FormParameters.text(ctx, "accepted").split(" "))
                .filter(digest -> digest.matches("[0-9a-f]{64}"))
                .limit(MOST_ACCEPTED)
                .toList();
    }

    /**
     * What the page shows.
     *
     * @param troubles what is in the way of the hour that was promised
     * @param checked when this was looked at
     */
    public record View(RoomView room, List<Message> troubles, Instant checked) {
        /** How many items keep the lesson back. */
        public long keeping() {
            return room.preflight().items().stream()
                    .filter(item -> item.keepsBack())
                    .count();
        }
    }
}
