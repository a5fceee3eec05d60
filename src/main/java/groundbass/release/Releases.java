package groundbass.release;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** The rows of releases, counted from 1 on in each episode. */
public final class Releases {
    /**
     * Says in SQL of a row of {@code release}, called by that name, that it is what readers get of its episode: of all that were
     * published the latest, whatever was published last.
     */
    public static final String CURRENT = """
            release.published_at is not null and release.number = (select max(x.number) from release x
                where x.episode_id = release.episode_id and x.published_at is not null)""";

    private final Jdbi jdbi;
    private final ReleaseFiles files;
    private final TrialReleases trials;
    private final Builds builds;

    public Releases(Jdbi jdbi) {
        this.jdbi = jdbi;
        files = new ReleaseFiles(jdbi);
        trials = new TrialReleases(jdbi);
        builds = new Builds(jdbi, files);
    }

    /** What was made of each. */
    public ReleaseFiles files() {
        return files;
    }

    /** Those that are only looked at. */
    public TrialReleases trials() {
        return trials;
    }

    /** How far the making of each has come. */
    public Builds builds() {
        return builds;
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
        overtakeIdle(handle, episode, spec.release());
        return insert(handle, episode, spec, spec.release(), correction, now);
    }

    static ReleaseId insert(
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
        ReleaseFiles.enter(handle, release.id(), 0, files);
    }

    /** Closes the earlier ones of an episode that nobody is building. */
    static void overtakeIdle(Handle handle, EpisodeId episode, int number) {
        overtake(handle, episode, number, List.of("waiting", "failed"));
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

    /** Corrections that this one has come before, and so never go out by themselves, the oldest first. */
    public List<Release> passedOver(Release correction) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where episode_id = :episode and correction and published_at is null and number < :number
                          and number > (select coalesce(max(number), 0) from release out
                            where out.episode_id = :episode and out.published_at is not null)
                        order by number""")
                .bind("episode", correction.episode())
                .bind("number", correction.spec().release())
                .mapTo(StoredRelease.class)
                .map(StoredRelease::release)
                .list());
    }

    /** What readers of this episode get; {@link Release#current} says it of releases in hand. */
    public Optional<Release> current(EpisodeId episode) {
        return jdbi.withHandle(handle -> handle.createQuery(StoredRelease.SELECT + """
                        where episode_id = :episode and\s""" + CURRENT)
                .bind("episode", episode)
                .mapTo(StoredRelease.class)
                .findOne()
                .map(StoredRelease::release));
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
}
