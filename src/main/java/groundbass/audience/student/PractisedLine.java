package groundbass.audience.student;

import groundbass.catalog.episode.EpisodeId;
import java.time.LocalDate;
import java.util.Objects;

/**
 * That a line was practised: when last, and how fast on that day.
 *
 * @param line its name in the lesson: {@code line}, {@code exercise-1}
 * @param practisedOn where the student was
 * @param tempo beats a minute, of a passage that was played to its end
 * @param fromPlace, toPlace the passage, as {@code 3.1}; empty for the whole line
 */
public record PractisedLine(
        EpisodeId episode, String line, LocalDate practisedOn, int tempo, String fromPlace, String toPlace) {
    public PractisedLine {
        Objects.requireNonNull(episode);
        Objects.requireNonNull(line);
        Objects.requireNonNull(practisedOn);
        Objects.requireNonNull(fromPlace);
        Objects.requireNonNull(toPlace);
    }

    /** Whether it adds to what is known: a later day, or on the same day a faster tempo. */
    boolean saysMoreThan(PractisedLine known) {
        int later = practisedOn.compareTo(known.practisedOn);
        return later > 0 || later == 0 && tempo > known.tempo;
    }
}
