package groundbass.release;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** How far the making of releases has come, and when what failed is tried again. */
public final class Builds {
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(15);

    private final Jdbi jdbi;
    private final ReleaseFiles files;

    Builds(Jdbi jdbi, ReleaseFiles files) {
        this.jdbi = jdbi;
        this.files = files;
    }

    /** Releases that nobody has finished building, oldest first: after a restart they are begun again. */
    public List<Release> unfinished() {
        return jdbi.withHandle(handle -> handle.createQuery(
                        StoredRelease.SELECT + "where state in ('waiting', 'building') order by created_at, id")
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /**
     * Has releases tried again whose pause is over and which somebody waits for. A pause that would last longer than any
     * comes from a clock that was ahead, and is over too.
     */
    public void tryAgain(Instant now) {
        jdbi.useHandle(handle -> handle.createUpdate("""
                        update release set state = 'waiting'
                        where state = 'failed' and (try_again_at <= :now or try_again_at > :longest)
                          and (correction or published_at is not null
                            or episode_id in (select id from episode where scheduled_at is not null))""")
                .bind("now", now)
                .bind("longest", now.plus(LONGEST_PAUSE))
                .execute());
    }

    /** Has one that failed tried again now; does nothing to any other. */
    public void tryNow(Handle handle, ReleaseId id) {
        handle.createUpdate("update release set state = 'waiting' where id = :id and state = 'failed'")
                .bind("id", id)
                .execute();
    }

    /**
     * Notes how far a build has come.
     *
     * @return whether it is still wanted: nobody else has closed it, and no later one has overtaken it
     */
    boolean progress(ReleaseId id, int done, int total) {
        return jdbi.withHandle(handle -> handle.createUpdate("""
                        update release set state = 'building', steps_done = :done, steps_total = :total
                        where id = :id and state in ('waiting', 'building')""")
                        .bind("id", id)
                        .bind("done", done)
                        .bind("total", total)
                        .execute())
                == 1;
    }

    /**
     * Enters files that readers may have before all are there; does nothing where the release is no longer being built.
     * What another has entered meanwhile stays as it is: readers may have it already.
     */
    void add(ReleaseId id, List<ReleaseFile> files) {
        jdbi.useTransaction(handle -> {
            boolean mine = handle.createQuery("select state from release where id = :id for update")
                    .bind("id", id)
                    .mapTo(String.class)
                    .findOne()
                    .filter(List.of("waiting", "building")::contains)
                    .isPresent();
            if (mine) {
                var there = this.files.of(id);
                var names = there.stream().map(ReleaseFile::name).collect(Collectors.toSet());
                var others = files.stream()
                        .filter(file -> !names.contains(file.name()))
                        .toList();
                ReleaseFiles.enter(handle, id, there.size(), others);
            }
        });
    }

    /**
     * Enters the files and closes the build, both or neither; does nothing where another has closed it. What readers had
     * before is among them, and takes its place in their order.
     */
    void ready(ReleaseId id, List<ReleaseFile> files, Instant now) {
        jdbi.useTransaction(handle -> {
            int mine = handle.createUpdate("""
                            update release set state = 'ready', built_at = :now
                            where id = :id and state in ('waiting', 'building')""").bind("id", id).bind("now", now).execute();
            if (mine == 1) {
                handle.execute("delete from release_file where release_id = ?", id.value());
                ReleaseFiles.enter(handle, id, 0, files);
            }
        });
    }

    /**
     * Notes that a build failed, and when it is tried again.
     *
     * @return how often it was tried; 0 where it is not wanted any more
     */
    int failed(ReleaseId id, BuildState.Failure cause, Instant now) {
        return jdbi.inTransaction(handle -> {
            int tries = handle.createQuery(
                            "select tries from release where id = :id and state in ('waiting', 'building') for update")
                    .bind("id", id)
                    .mapTo(Integer.class)
                    .findOne()
                    .map(before -> before + 1)
                    .orElse(0);
            handle.createUpdate("""
                            update release set state = 'failed', failure = :cause, tries = :tries, try_again_at = :again
                            where id = :id and state in ('waiting', 'building')""")
                    .bind("id", id)
                    .bind("cause", cause)
                    .bind("tries", tries)
                    .bind("again", now.plus(pauseAfter(tries)))
                    .execute();
            return tries;
        });
    }

    /** How long after the given try, counted from 1, a build is tried again: 1, 2, 4, 8 minutes, then every quarter of an hour. */
    static Duration pauseAfter(int tries) {
        var doubled = FIRST_PAUSE.multipliedBy(1L << Math.min(Math.max(tries - 1, 0), 10));
        return doubled.compareTo(LONGEST_PAUSE) < 0 ? doubled : LONGEST_PAUSE;
    }
}
