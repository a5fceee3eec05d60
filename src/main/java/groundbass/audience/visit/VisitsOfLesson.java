package groundbass.audience.visit;

import groundbass.catalog.episode.EpisodeId;
import java.util.Map;

/** How many visitors a lesson had, by what they did. */
public record VisitsOfLesson(EpisodeId lesson, Map<VisitKind, VisitNumbers> numbers) {
    public VisitsOfLesson {
        numbers = Map.copyOf(numbers);
    }

    /** Those of one kind. */
    public VisitNumbers of(VisitKind kind) {
        return numbers.getOrDefault(kind, VisitNumbers.NONE);
    }
}
