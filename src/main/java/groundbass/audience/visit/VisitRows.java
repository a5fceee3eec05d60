package groundbass.audience.visit;

import groundbass.audience.visit.Happening.Place;
import groundbass.catalog.episode.EpisodeId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.jdbi.v3.core.Handle;

/** Adds numbers to the sums. Works in the caller's transaction; of a lesson that was thrown away nothing is kept. */
final class VisitRows {
    private VisitRows() {}

    static void add(Handle handle, Map<Happening, Long> numbers) {
        // in one order, or two nodes could wait for one another
        numbers.entrySet().stream()
                .sorted(Comparator.comparing((Map.Entry<Happening, Long> entry) ->
                                entry.getKey().lesson().value())
                        .thenComparing(entry -> entry.getKey().place()))
                .forEach(entry ->
                        add(handle, entry.getKey().lesson(), entry.getKey().place(), entry.getValue()));
    }

    private static void add(Handle handle, EpisodeId lesson, Place place, long more) {
        var values = new ArrayList<Object>(List.of(more, lesson.value()));
        values.addAll(place.values());
        String columns = String.join(" = ? and ", place.columns());
        int known = handle.execute(
                "update " + place.table() + " set visitors = visitors + ? where episode_id = ? and " + columns + " = ?",
                values.toArray());
        if (known == 0 && isThere(handle, lesson)) {
            handle.execute(
                    "insert into " + place.table() + " (visitors, episode_id, " + String.join(", ", place.columns())
                            + ") values (?, ?" + ", ?".repeat(place.columns().size()) + ")",
                    values.toArray());
        }
    }

    private static boolean isThere(Handle handle, EpisodeId lesson) {
        return handle.createQuery("select count(*) from episode where id = :id")
                        .bind("id", lesson)
                        .mapTo(Integer.class)
                        .one()
                > 0;
    }
}
