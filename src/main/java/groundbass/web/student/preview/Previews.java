package groundbass.web.student.preview;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.settings.SiteSettings;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.release.request.StemsOnRequest.Stem;
import groundbass.web.answer.FileAnswer;
import groundbass.web.student.file.ExactSound;
import groundbass.web.student.file.OfferedFile;
import groundbass.web.student.file.ReleaseAnswers;
import groundbass.web.student.lesson.EpisodeView;
import groundbass.web.student.lesson.EpisodeViews;
import groundbass.web.student.lesson.ForReader;
import groundbass.web.student.lesson.PublishedLesson;
import groundbass.web.student.lesson.VideoView;
import groundbass.web.student.lesson.Ways;
import groundbass.web.view.Reader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Instant;
import java.util.Optional;
import java.util.function.Supplier;

/** Releases that may not be out, as their page will show them; made by the views that make the page. */
public final class Previews {
    private static final String NOWHERE = "private, no-store";

    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Releases releases;
    private final ReleaseAnswers answers;
    private final EpisodeViews views;
    private final Supplier<SiteSettings> settings;
    private final Clock clock;

    public Previews(
            SeriesCatalog catalog,
            Episodes episodes,
            Releases releases,
            ReleaseAnswers answers,
            EpisodeViews views,
            Supplier<SiteSettings> settings,
            Clock clock) {
        this.catalog = catalog;
        this.episodes = episodes;
        this.releases = releases;
        this.answers = answers;
        this.views = views;
        this.settings = settings;
        this.clock = clock;
    }

    /** By the last part of an address, whatever somebody wrote there; none of a draft that was thrown away. */
    Optional<Release> find(String id) {
        return ReleaseId.parse(id).flatMap(releases::find).filter(release -> episodes.find(release.episode())
                .isPresent());
    }

    boolean isOf(EducatorId educator, Release release) {
        return episodes.open(educator, Deed.WRITE, release.episode()).isPresent();
    }

    EpisodeView lesson(Release release, Reader reader, Ways ways) {
        return views.of(shown(release), settings.get().downloadsNeedSignIn(), ForReader.ANYBODY, reader, ways);
    }

    Optional<VideoView> video(Release release) {
        return views.video(release);
    }

    Optional<OfferedFile> file(Release release, String name) {
        return releases.files().named(release.id(), name).map(found -> OfferedFile.of(release, found));
    }

    FileAnswer takenHome(OfferedFile file) {
        return answer(file).withDownloadName(file.downloadName());
    }

    FileAnswer played(OfferedFile file) {
        return answer(file);
    }

    FileAnswer played(Stem stem) {
        try {
            return ExactSound.answer(stem).withCacheControl(NOWHERE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private FileAnswer answer(OfferedFile offered) {
        try {
            return answers.of(offered.release(), offered.file()).withCacheControl(NOWHERE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private PublishedLesson shown(Release release) {
        var episode = episodes.find(release.episode()).orElseThrow();
        var series = catalog.find(episode.series()).orElseThrow();
        boolean corrected = episode.isPublished()
                && releases.current(episode.id())
                        .filter(out -> !out.id().equals(release.id()))
                        .isPresent();
        return PublishedLesson.of(
                series, episode, release, corrected, episodes.neighbours(episode), out(episode, release));
    }

    /** When students will have it: its hour, else now. */
    private Instant out(Episode episode, Release release) {
        return release.publishedAt()
                .or(() -> episode.state() instanceof EpisodeState.Scheduled promised
                        ? Optional.of(promised.at())
                        : Optional.empty())
                .orElseGet(clock::instant);
    }
}
