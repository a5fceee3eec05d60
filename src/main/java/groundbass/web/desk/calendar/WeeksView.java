package groundbass.web.desk.calendar;

import groundbass.text.Message;
import groundbass.web.view.FieldProblems;
import java.util.List;
import java.util.Optional;

/**
 * The coming weeks of all series of an educator.
 *
 * @param weeks those in which there is anything, the next first
 * @param held what was wanted and could not be done
 * @param moved the lesson of which something was done, and how it stands now
 */
public record WeeksView(List<SeriesHead> series, List<Week> weeks, Optional<Held> held, Optional<Moved> moved) {
    /** Whether series stand side by side, each in a column of its own. */
    public boolean isSideBySide() {
        return series.size() > 1 && series.size() <= WeekTable.MOST_COLUMNS;
    }

    /**
     * Something that could not be done, and why.
     *
     * @param id of the lesson; empty where it was about an hour alone
     * @param local the hour that was wanted, as the form sent it
     * @param path of the lesson, where it is mended there
     * @param meanwhile whether another window, or the hour, was faster
     */
    public record Held(
            String id, String local, Optional<String> path, String title, boolean meanwhile, FieldProblems problems) {
        Optional<String> chosenFor(String hour) {
            return hour.equals(local) && !id.isEmpty() ? Optional.of(id) : Optional.empty();
        }
    }

    /** A lesson of which something was done. */
    public record Moved(String id, String title, Message state) {}

    /**
     * A series.
     *
     * @param column its place among the others, from 1
     * @param timed whether it has a rhythm
     * @param waiting lessons without an hour
     */
    public record SeriesHead(String id, String title, String zone, int column, boolean timed, List<Waiting> waiting) {}

    /** A week from Monday on (ISO 8601). */
    public record Week(Message title, List<Cell> cells) {}

    /** What stands in a week: an hour of a series. */
    public enum Kind {
        /** An hour of a rhythm. */
        HOUR,
        /** One that is skipped. */
        BREAK,
        /** The hour of a lesson beside the rhythm. */
        BESIDE
    }

    /**
     * An hour of a series.
     *
     * @param local as the form sends it
     * @param exists whether clocks show it on that day
     * @param proposed the id of the lesson that is chosen at first; empty where there is none to propose
     * @param choices what can be promised for it; none unless it is free
     */
    public record Cell(
            Kind kind,
            SeriesHead series,
            String local,
            String hour,
            boolean exists,
            String proposed,
            Optional<Entry> lesson,
            List<Choice> choices) {
        public boolean isFree() {
            return kind == Kind.HOUR && exists && lesson.isEmpty();
        }

        /** Whether it is an hour of a rhythm, free or not. */
        public boolean isTimed() {
            return kind == Kind.HOUR;
        }

        public boolean isPause() {
            return kind == Kind.BREAK;
        }

        public boolean isBeside() {
            return kind == Kind.BESIDE;
        }

        /** The day alone, as the form sends it. */
        public String day() {
            return local.substring(0, local.indexOf('T'));
        }
    }

    /**
     * A promised lesson.
     *
     * @param seen how it stands, as its forms send it
     * @param hours free hours that it can move to
     * @param others promised lessons of its series that it can change places with
     */
    public record Entry(
            String id,
            String path,
            int number,
            String title,
            String seen,
            EpisodeStatus standing,
            List<Message> troubles,
            Optional<Lacks> lacks,
            List<FreeHour> hours,
            List<Other> others) {
        public boolean isMovable() {
            return !hours.isEmpty() || !others.isEmpty();
        }
    }

    /** A free hour. */
    public record FreeHour(String local, String hour) {}

    /** A lesson to change places with; {@code value} names it and how it stands. */
    public record Other(String value, String label) {}

    /** A lesson without an hour; {@code lacks} where that was looked over. */
    public record Waiting(String id, String path, int number, String title, Optional<Lacks> lacks) {}

    /**
     * What a lesson's way out still lacks.
     *
     * @param points the titles of what keeps it back
     */
    public record Lacks(Message sum, List<Message> points) {}

    /** A lesson to choose; {@code value} names it, and how it stands where it is {@code promised} and would be moved. */
    public record Choice(String id, String value, String label, boolean promised) {}
}
