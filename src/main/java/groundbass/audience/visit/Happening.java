package groundbass.audience.visit;

import groundbass.catalog.episode.EpisodeId;
import java.util.List;

/** What one visitor can be counted for at a lesson. */
sealed interface Happening {
    EpisodeId lesson();

    /** Where its number is kept. */
    Place place();

    /**
     * A row of a table.
     *
     * @param columns that tell it from others of one lesson
     * @param values of these columns
     */
    record Place(String table, List<String> columns, List<Object> values) implements Comparable<Place> {
        public Place {
            columns = List.copyOf(columns);
            values = List.copyOf(values);
        }

        @Override
        public int compareTo(Place that) {
            return (table + values).compareTo(that.table + that.values);
        }
    }

    /** @param age days, as {@link Ages} has them */
    record Visit(EpisodeId lesson, VisitKind kind, int age) implements Happening {
        @Override
        public Place place() {
            return new Place("visit_sum", List.of("kind", "age"), List.of(kind.value(), age));
        }
    }

    /** So many quarters of a line at least. */
    record Part(EpisodeId lesson, String line, int quarters) implements Happening {
        @Override
        public Place place() {
            return new Place("played_part", List.of("line", "quarters"), List.of(line, quarters));
        }
    }

    /** A bar within a passage that was repeated, as the sheet of a release numbers it. */
    record Loop(EpisodeId lesson, int release, String line, int bar) implements Happening {
        @Override
        public Place place() {
            return new Place("repeated_bar", List.of("release_number", "line", "bar"), List.of(release, line, bar));
        }
    }

    /** A link to a course. */
    record Course(EpisodeId lesson, String address) implements Happening {
        @Override
        public Place place() {
            return new Place("course_click", List.of("address"), List.of(address));
        }
    }
}
