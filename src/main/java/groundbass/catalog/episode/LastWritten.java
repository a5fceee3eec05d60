package groundbass.catalog.episode;

import java.time.Instant;

/** When something of a lesson was saved last; of one that nobody wrote in, when it was begun. */
public record LastWritten(EpisodeId id, Instant at) {}
