package groundbass.release.find;

import groundbass.document.Level;
import groundbass.identity.Slug;
import java.util.List;

/** What the lessons that are out have, so that nobody is offered a choice which finds nothing. Each list is in order. */
public record Choices(
        List<String> techniques,
        List<Level> levels,
        List<String> keys,
        List<String> meters,
        List<Integer> strings,
        List<SeriesName> series) {
    /** A series and its name. */
    public record SeriesName(Slug slug, String title) {}
}
