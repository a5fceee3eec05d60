package groundbass.catalog.episode;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The order of a series. Published numbers stand fast; the unpublished episodes share out the numbers between them that
 * they have together.
 */
final class EpisodeNumbers {
    private EpisodeNumbers() {}

    /** One more than the highest. */
    static int next(List<Episode> series) {
        return series.stream().mapToInt(Episode::number).max().orElse(0) + 1;
    }

    /**
     * Which numbers change so that {@code moved} gets {@code to}: those between its old and its new place each move up
     * by one place.
     *
     * @param to a free number, or that of an unpublished episode
     */
    static Map<EpisodeId, Integer> move(List<Episode> series, Episode moved, int to) {
        if (series.stream().noneMatch(episode -> episode.number() == to)) {
            return Map.of(moved.id(), to);
        }
        var open = series.stream().filter(episode -> !episode.isPublished()).toList();
        var numbers = open.stream().map(Episode::number).toList();
        var order = new ArrayList<>(open);
        order.removeIf(episode -> episode.id().equals(moved.id()));
        order.add(numbers.indexOf(to), moved);
        return changes(order, numbers);
    }

    private static Map<EpisodeId, Integer> changes(List<Episode> order, List<Integer> numbers) {
        Map<EpisodeId, Integer> changes = new HashMap<>();
        for (int i = 0; i < order.size(); i++) {
            if (order.get(i).number() != numbers.get(i)) {
                changes.put(order.get(i).id(), numbers.get(i));
            }
        }
        return changes;
    }
}
