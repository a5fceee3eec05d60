package groundbass.release;

import groundbass.catalog.episode.EpisodeId;
import java.time.Instant;
import java.util.Optional;

/** A release as its row has it; what is being built, and how it went, follows from several columns. */
record StoredRelease(
        ReleaseId id,
        EpisodeId episode,
        BuildSpec spec,
        String state,
        int stepsDone,
        int stepsTotal,
        String failure,
        int tries,
        Optional<Instant> tryAgainAt,
        Instant createdAt,
        Optional<Instant> publishedAt,
        String note,
        boolean noteByLetter) {
    static final String SELECT = """
            select id, episode_id as episode, recipe as spec, state, steps_done, steps_total, failure, tries,
                try_again_at, created_at, published_at, note, note_by_letter
            from release\s""";

    Release release() {
        return new Release(
                id, episode, spec, buildState(), createdAt, publishedAt, new ReleaseNote(note, noteByLetter));
    }

    private BuildState buildState() {
        return switch (state) {
            case "waiting" -> new BuildState.Waiting();
            case "building" -> new BuildState.Building(stepsDone, stepsTotal);
            case "ready" -> new BuildState.Ready();
            case "failed" -> new BuildState.Failed(BuildState.Failure.stored(failure), tries, tryAgainAt.orElseThrow());
            case "overtaken" -> new BuildState.Overtaken();
            default -> throw new IllegalStateException("no such state of a release: " + state);
        };
    }
}
