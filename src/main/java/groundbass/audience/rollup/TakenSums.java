package groundbass.audience.rollup;

import groundbass.audience.download.DownloadRows;

/**
 * The SQL that counts records: the same for what is summed up, for what is not yet, and for the proof that both agree.
 *
 * <p>What an educator takes at the desk and the repeated request of one visitor count nowhere; robots count for themselves.
 * A student is counted for a lesson once, where they took their first file of it; ids grow with time, so that the first is
 * the smallest.
 */
public final class TakenSums {
    /** The columns of {@code taken_file} and {@code taken_hour} that are sums. */
    public static final String NAMES = "complete, broken_off, handed_over, running, nobody, newcomers, robots";

    /** They, summed over {@link #records}. */
    public static final String SUMS = """
            count(*) filter (where not taken.robot and taken.state = 'complete') as complete,
            count(*) filter (where not taken.robot and taken.state = 'broken off') as broken_off,
            count(*) filter (where not taken.robot and taken.state = 'handed over') as handed_over,
            count(*) filter (where not taken.robot and taken.state = 'started') as running,
            count(*) filter (where not taken.robot and taken.nobody) as nobody,
            count(*) filter (where taken.newcomer) as newcomers,
            count(*) filter (where taken.robot) as robots""";

    private static final String AGE = """
            cast(case when episode.published_at is null or download.started_at < episode.published_at then 0
                else floor(extract(epoch from (download.started_at - episode.published_at)) / 3600) end as integer)""";

    /** An outer join, or H2 would go through all lessons and look for the records of each. */
    private static final String BESIDE = " left join episode on episode.id = download.episode_id";

    private TakenSums() {}

    /** {@link #records} with their age: whole hours since their lesson was brought out, 0 for what was taken before that. */
    public static String aged(String which) {
        return records(", " + AGE + " as age", BESIDE, which);
    }

    /**
     * Those that are counted.
     *
     * @param which a condition more on {@code download}
     */
    public static String records(String which) {
        return records("", "", which);
    }

    private static String records(String more, String beside, String which) {
        return """
                (select download.episode_id, download.file_name, download.started_at, download.state, download.robot,
                    download.student_id is null and not download.departed as nobody,
                    case when download.student_id is null then download.departed_first
                        else <first> end as newcomer""".replace("<first>", DownloadRows.FIRST_OF_LESSON)
                + more
                + " from download" + beside + " where not download.own and not download.repeated and (" + which
                + ")) taken";
    }
}
