package groundbass.web.desk.site;

import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/** What is lost, or becomes something else, where a line goes to another program or comes from one: the tables of musicxml.md in short. */
public final class ExchangePage implements PageGroup {
    /** How many rows each direction has. */
    private static final List<Map.Entry<String, Integer>> WAYS =
            List.of(Map.entry("xml-out", 8), Map.entry("midi-out", 8), Map.entry("xml-in", 8), Map.entry("midi-in", 7));

    private final DeskContext desk;

    public ExchangePage(DeskContext desk) {
        this.desk = desk;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/exchange", Role.EDUCATOR, this::show);
    }

    private void show(Context ctx) {
        var ways = WAYS.stream().map(way -> way(way.getKey(), way.getValue())).toList();
        desk.pages().show(ctx, "desk/exchange", new View(ways));
    }

    private static Way way(String name, int rows) {
        return new Way(
                name,
                Message.of("exchange." + name),
                IntStream.rangeClosed(1, rows)
                        .mapToObj(n -> "exchange." + name + "." + n)
                        .map(key -> new Row(Message.of(key), Message.of(key + ".becomes")))
                        .toList());
    }

    /** What the page shows. */
    public record View(List<Way> ways) {}

    /** One direction of one format; {@code id} for the address on the page. */
    public record Way(String id, Message title, List<Row> rows) {}

    /** What something becomes. */
    public record Row(Message what, Message becomes) {}
}
