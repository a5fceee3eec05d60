package groundbass.catalog.episode;

import groundbass.catalog.series.SeriesId;
import groundbass.document.Level;
import groundbass.identity.Slug;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;

/** An episode as its row has it; what its state is follows from which moments are there. */
record EpisodeRow(
        EpisodeId id,
        SeriesId series,
        int number,
        Slug slug,
        String title,
        Level level,
        String summary,
        Optional<Instant> scheduledAt,
        Optional<ZoneId> scheduledZone,
        Optional<String> scheduledLocal,
        Optional<Instant> promisedAt,
        int promisedRelease,
        Optional<Instant> publishedAt,
        Optional<Instant> withdrawnAt,
        String withdrawnWhy,
        Instant createdAt) {
    /** All columns, of a table that is called e. */
    static final String COLUMNS = """
            e.id, e.series_id as series, e.number, e.slug, e.title, e.level, e.summary, e.scheduled_at,
            e.scheduled_zone, e.scheduled_local, e.promised_at, e.promised_release, e.published_at, e.withdrawn_at,
            e.withdrawn_why, e.created_at""";

    static final String SELECT = "select " + COLUMNS + " from episode e ";

    Episode episode() {
        return new Episode(id, series, number, slug, title, level, summary, state(), createdAt);
    }

    private EpisodeState state() {
        if (publishedAt.isPresent()) {
            return new EpisodeState.Published(
                    publishedAt.get(), withdrawnAt.map(at -> new Withdrawal(at, withdrawnWhy)));
        }
        return scheduledAt.<EpisodeState>map(this::scheduled).orElseGet(EpisodeState.Unscheduled::new);
    }

    private EpisodeState.Scheduled scheduled(Instant at) {
        return new EpisodeState.Scheduled(
                at,
                scheduledZone.orElseThrow(),
                LocalDateTime.parse(scheduledLocal.orElseThrow()),
                promisedAt.orElse(Instant.EPOCH), // older promises do not say
                Math.max(1, promisedRelease));
    }
}
