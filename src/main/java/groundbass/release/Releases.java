package groundbass.release;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.identity.Sha256;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * The rows of releases and their files. Numbers from 1 on count what was made to be published; a trial, made only to be
 * looked at, has a number below zero until it is published after all.
 */
public final class Releases {
    private static final Duration FIRST_PAUSE = Duration.ofMinutes(1);
    private static final Duration LONGEST_PAUSE = Duration.ofMinutes(15);

    private static final String SELECT_FILE =
            "select name, role, media_type, byte_count as size, sha256 from release_file ";

    private final Jdbi jdbi;

    public Releases(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** The number that the next release of an episode takes. */
    public int nextNumber(Handle handle, EpisodeId episode) {
        return handle.createQuery("""
                        select coalesce(max(number), 0) + 1 from release where episode_id = :episode and number > 0""")
                .bind("episode", episode)
                .mapTo(Integer.class)
                .one();
    }

    /**
     * Enters a release that waits to be built. Earlier ones of its episode that nobody has begun, or that failed, are
     * overtaken by it; one that is being built goes on, since its files may be wanted before these are there.
     *
     * @param correction whether it takes the place of what is out as soon as it is ready
     */
    public ReleaseId create(Handle handle, EpisodeId episode, BuildSpec spec, boolean correction, Instant now) {
        overtake(handle, episode, spec.release(), List.of("waiting", "failed"));
        return insert(handle, episode, spec, spec.release(), correction, now);
    }

    /** Enters a release that is built to be looked at, and never goes out by itself. */
    public ReleaseId createTrial(Handle handle, EpisodeId episode, BuildSpec spec, Instant now) {
        int lowest = handle.createQuery("select coalesce(min(number), 0) from release where episode_id = :episode")
                .bind("episode", episode)
                .mapTo(Integer.class)
                .one();
        return insert(handle, episode, spec, Math.min(lowest, 0) - 1, false, now);
    }

    /** The trial of an episode that was made by exactly this build specification, unless it failed. */
    public Optional<Release> trial(Handle handle, EpisodeId episode, BuildSpec spec) {
        return handle
                .createQuery(StoredRelease.SELECT + "where episode_id = :episode and number < 0 order by number")
                .bind("episode", episode)
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list()
                .stream()
                .filter(made -> made.spec().equals(spec) && !made.isFailed())
                .findFirst();
    }

    /** Makes a trial a release to be published, as if it had been entered now. */
    public ReleaseId adopt(Handle handle, Release trial, boolean correction, Instant now) {
        handle.createUpdate("""
                        update release set number = :number, correction = :correction, created_at = :now
                        where id = :id and number < 0""")
                .bind("number", trial.spec().release())
                .bind("correction", correction)
                .bind("now", now)
                .bind("id", trial.id())
                .execute();
        overtake(handle, trial.episode(), trial.spec().release(), List.of("waiting", "failed"));
        return trial.id();
    }

    private static ReleaseId insert(
            Handle handle, EpisodeId episode, BuildSpec spec, int number, boolean correction, Instant now) {
        var id = ReleaseId.next();
        handle.createUpdate("""
                        insert into release (id, episode_id, revision_id, number, recipe, correction, state, steps_done, steps_total,
                            failure, created_at)
                        values (:id, :episode, :revision, :number, :recipe, :correction, 'waiting', 0, 0, '', :now)""")
                .bind("id", id)
                .bind("episode", episode)
                .bind("revision", spec.revision())
                .bind("number", number)
                .bind("recipe", spec)
                .bind("correction", correction)
                .bind("now", now)
                .execute();
        return id;
    }

    /**
     * Enters a release of another server as it was there: built, and out since its own moment.
     *
     * @param release ready and published, with an id that nothing here has
     */
    public void enter(Handle handle, Release release, List<ReleaseFile> files) {
        handle.createUpdate("""
                        insert into release (id, episode_id, revision_id, number, recipe, correction, state, steps_done, steps_total,
                            failure, created_at, built_at, published_at, note, note_by_letter)
                        values (:id, :episode, :revision, :number, :spec, false, 'ready', 0, 0, '', :createdAt, :out, :out,
                            :text, :byLetter)""")
                .bindMethods(release)
                .bindMethods(release.note())
                .bind("revision", release.spec().revision())
                .bind("number", release.spec().release())
                .bind("out", release.publishedAt().orElseThrow())
                .execute();
        insert(handle, release.id(), 0, files);
    }

    private static void overtake(Handle handle, EpisodeId episode, int number, List<String> states) {
        handle.createUpdate("""
                        update release set state = 'overtaken'
                        where episode_id = :episode and number < :number and number > 0 and published_at is null
                          and state in (<states>)""")
                .bindList("states", states)
                .bind("episode", episode)
                .bind("number", number)
                .execute();
    }

    public Optional<Release> find(ReleaseId id) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + "where id = :id")
                .bind("id", id)
                .mapTo(StoredRelease.class)
                .findOne()
                .map(StoredRelease::release));
    }

    /** All releases of an episode that were made to be published, the newest first. */
    public List<Release> of(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(
                        StoredRelease.SELECT + "where episode_id = :episode and number > 0 order by number desc")
                .bind("episode", episode)
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /** The release that was made last, whatever became of it. */
    public Optional<Release> latest(EpisodeId episode) {
        return of(episode).stream().findFirst();
    }

    /** Corrections that are ready and not yet out, oldest first; of one episode the latest, where no later one is out. */
    public List<Release> readyCorrections() {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where correction and state = 'ready' and published_at is null
                          and not exists (
                            select 1 from release later
                            where later.episode_id = release.episode_id and later.number > release.number
                              and (later.published_at is not null or later.correction and later.state = 'ready'))
                        order by created_at, id""")
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /** What readers of this episode get: of all that were published the latest, whatever was published last. */
    public Optional<Release> current(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where episode_id = :episode and published_at is not null
                        order by number desc fetch first 1 row only""")
                .bind("episode", episode)
                .mapTo(StoredRelease.class)
                .findOne()
                .map(StoredRelease::release));
    }

    /** Releases that nobody has finished building, oldest first: after a restart they are begun again. */
    public List<Release> unfinished() {
        return jdbi.withHandle(handle -> handle.createQuery(
                        StoredRelease.SELECT + "where state in ('waiting', 'building') order by created_at, id")
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /** Episodes in which this educator writes, with a draft that was saved after their latest release was asked for. */
    public List<EpisodeId> writtenSince(EducatorId who) {
        return jdbi.withHandle(handle -> handle.createQuery("""
                        select d.episode_id from draft d join episode e on e.id = d.episode_id
                        where d.saved_at > (select max(r.created_at) from release r
                                            where r.episode_id = d.episode_id and r.number > 0)
                            and e.series_id in\s""" + Deed.WRITE.series())
                .bind("who", who)
                .mapTo(EpisodeId.class)
                .list());
    }

    public List<ReleaseFile> files(ReleaseId id) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT_FILE + "where release_id = :id order by place")
                .bind("id", id)
                .mapTo(ReleaseFile.class)
                .list());
    }

    /** A file by its name; a name from outside is only ever compared, never made a path. */
    public Optional<ReleaseFile> file(ReleaseId id, String name) {
        return jdbi.withHandle(handle -> handle.createQuery(SELECT_FILE + "where release_id = :id and name = :name")
                .bind("id", id)
                .bind("name", name)
                .mapTo(ReleaseFile.class)
                .findOne());
    }

    /** Until the transaction ends, no other server enters a file of this release. Whether it is there. */
    boolean lock(Handle handle, ReleaseId id) {
        return handle.createQuery("select id from release where id = :id for update")
                .bind("id", id)
                .mapTo(ReleaseId.class)
                .findOne()
                .isPresent();
    }

    /** Whether any release needs this content; for the sweep of stored files. What is put together as it is sent needs none. */
    public boolean names(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery(
                                "select count(*) from release_file where sha256 = :sha256 and role <> :streamed")
                        .bind("sha256", sha256)
                        .bind("streamed", FileRole.ZIP)
                        .mapTo(Integer.class)
                        .one())
                > 0;
    }

    /** The releases that need this content, the newest first. */
    public List<Release> needing(Sha256 sha256) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where id in (select release_id from release_file where sha256 = :sha256)
                        order by created_at desc, id""")
                .bind("sha256", sha256)
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

    /** Corrections that cannot be built as things are, the newest of each episode. */
    public List<Release> failedCorrections() {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where correction and state = 'failed'
                          and number = (select max(other.number) from release other where other.episode_id = release.episode_id)
                        order by created_at, id""")
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /**
     * Deletes the trials made before this instant, but for those that somebody still wants. Their files go with the sweep,
     * unless another release has the same.
     */
    public void forgetTrials(Instant before, Predicate<ReleaseId> wanted) {
        var old = jdbi.withHandle(handle -> handle.createQuery(
                        "select id from release where number < 0 and created_at < :before order by created_at, id")
                .bind("before", before)
                .mapTo(ReleaseId.class)
                .list());
        old.stream().filter(wanted.negate()).forEach(this::forgetTrial);
    }

    /** One that was published meanwhile stays. */
    private void forgetTrial(ReleaseId id) {
        jdbi.useTransaction(handle -> {
            boolean trial = handle.createQuery("select number from release where id = :id for update")
                    .bind("id", id)
                    .mapTo(Integer.class)
                    .findOne()
                    .filter(number -> number < 0)
                    .isPresent();
            if (trial) {
                handle.execute("delete from release_file where release_id = ?", id.value());
                handle.execute("delete from release where id = ?", id.value());
            }
        });
    }

    /** Deletes what was made of a draft that is deleted. What was ever published stays. */
    public void forget(Handle handle, EpisodeId episode) {
        handle.execute(
                "delete from release_file where release_id in"
                        + " (select id from release where episode_id = ? and published_at is null)",
                episode);
        handle.execute("delete from release where episode_id = ? and published_at is null", episode);
    }

    /** Says what students are told of a release that is not out yet. */
    public void annotate(Handle handle, ReleaseId id, ReleaseNote note) {
        handle.createUpdate("""
                        update release set note = :text, note_by_letter = :byLetter
                        where id = :id and published_at is null""").bindMethods(note).bind("id", id).execute();
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
                var there = files(id);
                var names = there.stream().map(ReleaseFile::name).collect(Collectors.toSet());
                var others = files.stream()
                        .filter(file -> !names.contains(file.name()))
                        .toList();
                insert(handle, id, there.size(), others);
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
                insert(handle, id, 0, files);
            }
        });
    }

    /**
     * Notes that a build failed, and when it is tried again.
     *
     * @return how often it was tried; 0 where it is not wanted any more
     */
    int failed(ReleaseId id, String cause, Instant now) {
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
                    .bind("cause", cause.substring(0, Math.min(cause.length(), 2000)))
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

    /**
     * Makes a release public, unless a later one of its episode is out: readers never go back. Earlier ones that are not
     * built yet are overtaken; later ones take its place as soon as they are ready.
     *
     * @return whether this call made it public
     */
    public boolean publish(Handle handle, ReleaseId id, Instant now) {
        return publish(handle, id, "state = 'ready'", now);
    }

    /**
     * Makes a release public whose page and sheet are there while its sound is still being made: files come to it, and
     * none that is there changes.
     *
     * @return whether this call made it public
     */
    public boolean publishReadable(Handle handle, ReleaseId id, Instant now) {
        return publish(handle, id, """
                state in ('waiting', 'building', 'ready')
                  and exists (select 1 from release_file where release_id = release.id)""", now);
    }

    private boolean publish(Handle handle, ReleaseId id, String made, Instant now) {
        int mine = handle.createUpdate("""
                        update release set published_at = :now
                        where id = :id and published_at is null and <made>
                          and not exists (
                            select 1 from release later
                            where later.episode_id = release.episode_id and later.number > release.number
                              and later.published_at is not null)""")
                .define("made", made)
                .bind("id", id)
                .bind("now", now)
                .execute();
        if (mine == 1) {
            var out = find(id).orElseThrow();
            overtake(handle, out.episode(), out.spec().release(), List.of("waiting", "building", "failed"));
            handle.createUpdate("""
                            update release set correction = true
                            where episode_id = :episode and number > :number and published_at is null""")
                    .bind("episode", out.episode())
                    .bind("number", out.spec().release())
                    .execute();
        }
        return mine == 1;
    }

    private static void insert(Handle handle, ReleaseId id, int first, List<ReleaseFile> files) {
        var batch = handle.prepareBatch("""
                insert into release_file (release_id, place, name, role, media_type, byte_count, sha256)
                values (:id, :place, :name, :role, :mediaType, :size, :sha256)""");
        for (int place = 0; place < files.size(); place++) {
            batch.bind("id", id)
                    .bind("place", first + place)
                    .bindMethods(files.get(place))
                    .add();
        }
        batch.execute();
    }
}
