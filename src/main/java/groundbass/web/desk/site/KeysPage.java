package groundbass.web.desk.site;

import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The keys of the desk on one page; the script of a room lays it over the room. */
public final class KeysPage implements PageGroup {
    /** How many keys each part of the desk has. */
    private static final List<Map.Entry<String, Integer>> GROUPS = List.of(
            Map.entry("room", 4),
            Map.entry("sheet", 12),
            Map.entry("strip", 8),
            Map.entry("text", 3),
            Map.entry("neck", 2),
            Map.entry("bench", 2),
            Map.entry("prompter", 5));

    private final DeskContext desk;

    public KeysPage(DeskContext desk) {
        this.desk = desk;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/keys", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var reader = desk.pages().reader(ctx);
        var groups = GROUPS.stream()
                .map(group -> new Group(
                        Message.of("keys." + group.getKey()),
                        IntStream.rangeClosed(1, group.getValue())
                                .mapToObj(n -> row("keys." + group.getKey() + "." + n, reader))
                                .toList()))
                .toList();
        desk.pages().show(ctx, "desk/keys", new View(groups));
    }

    private static Row row(String key, Reader reader) {
        var caps = Stream.of(reader.say(Message.of(key + ".keys")).split(" ")).toList();
        return new Row(caps, Message.of(key));
    }

    /** What the page shows. */
    public record View(List<Group> groups) {}

    /** The keys of one part of the desk. */
    public record Group(Message title, List<Row> rows) {}

    /**
     * What some keys do.
     *
     * @param caps what stands on the keys that are pressed together
     */
    public record Row(List<String> caps, Message does) {}
}
