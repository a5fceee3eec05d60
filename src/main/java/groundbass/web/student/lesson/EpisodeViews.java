package groundbass.web.student.lesson;

import groundbass.document.Level;
import groundbass.lesson.PageContent;
import groundbass.release.FileRole;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.text.Message;
import groundbass.web.student.lesson.EpisodeView.FileView;
import groundbass.web.student.lesson.EpisodeView.LineView;
import groundbass.web.view.NoteViews;
import groundbass.web.view.NoteViews.PhotoView;
import groundbass.web.view.Reader;
import groundbass.web.view.TechniqueWords;
import io.javalin.http.NotFoundResponse;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Makes what a lesson's page shows. */
public final class EpisodeViews {
    /** Most readers look for none of them. */
    private static final Set<FileRole> SPECIAL = EnumSet.of(
            FileRole.MIDI,
            FileRole.MUSICXML,
            FileRole.PLAIN_TAB,
            FileRole.LINE_TEXT,
            FileRole.BRAILLE,
            FileRole.BRAILLE_TEXT);

    /** Below the page's title and the section's. */
    private static final int HEADINGS_OF_NOTES = 3;

    private final ReleaseContents contents;
    private final OwnTracks ownTracks;
    private final boolean keeping;

    /** @param keeping whether lessons may be kept on a device */
    public EpisodeViews(ReleaseContents contents, OwnTracks ownTracks, boolean keeping) {
        this.contents = contents;
        this.ownTracks = ownTracks;
        this.keeping = keeping;
    }

    public EpisodeView of(PublishedLesson lesson, boolean signIn, ForReader own, Reader site, Ways ways) {
        var series = lesson.series();
        var episode = lesson.episode();
        var reader = site.in(series.zone());
        var content = contents.page(lesson.release().id()).orElseThrow(NotFoundResponse::new);
        var files = contents.files(lesson.release().id());
        var fileViews = new FileViews(lesson.release(), content, ownTracks.of(lesson.release()), ways, reader);
        var out = lesson.out();
        return new EpisodeView(
                content.language(),
                series.title(),
                Paths.of(series),
                episode.number(),
                content.title(),
                level(content, reader),
                TechniqueWords.of(content.techniques(), reader),
                content.summary(),
                out,
                reader.date(out),
                corrected(lesson, out, reader),
                lesson.release().note().text(),
                own.older(),
                own.differences(),
                lesson.release().isSoundToFollow(),
                lines(lesson.release().id(), content, files, ways, reader)
                        .findFirst()
                        .orElseThrow(),
                lines(lesson.release().id(), content, files, ways, reader)
                        .skip(1)
                        .toList(),
                NoteViews.html(
                        content.notes(), HEADINGS_OF_NOTES, content.pieces(), photos(lesson.release(), content, ways)),
                fileViews.tracks(files),
                files.stream().filter(EpisodeViews::isBundle).findFirst().map(fileViews::file),
                single(files, role -> !SPECIAL.contains(role), fileViews),
                single(files, SPECIAL::contains, fileViews),
                signIn,
                files.stream()
                        .filter(file -> file.role().isOffered() && file.name().equals(own.wanted()))
                        .findFirst()
                        .map(fileViews::file),
                rights(content),
                content.gear(),
                VideoView.of(content.video()),
                content.chapters(),
                content.courses(),
                lesson.neighbours().earlier().map(other -> Cards.of(series, other, reader)),
                lesson.neighbours().later().map(other -> Cards.of(series, other, reader)),
                Optional.of(episode.id().value()).filter(id -> ways.remembered()),
                Optional.of(SittingPage.path(episode, lesson.release())).filter(path -> ways.counted()),
                Optional.of(lesson.release())
                        .filter(release -> keeping && ways.remembered() && !release.isSoundToFollow())
                        .map(release -> release.id().value()),
                Optional.of(lesson.release())
                        .filter(release -> ways.remembered() && release.makesTracks())
                        .map(release -> "/files/" + release.id()),
                LinkPictures.in(files).map(file -> LinkPictures.path(episode.id())));
    }

    /** What a kept page adds to its version: how much of a release is there already whose sound is to follow. */
    String version(Release release) {
        String there =
                release.isSoundToFollow() ? "-" + contents.files(release.id()).size() : "";
        return contents.version() + there;
    }

    /** The video of a lesson, if it has one. */
    public Optional<VideoView> video(Release release) {
        return contents.page(release.id()).flatMap(content -> VideoView.of(content.video()));
    }

    private static String level(PageContent content, Reader reader) {
        return Level.parse(content.level())
                .map(level -> reader.say(Message.of(level.messageKey())))
                .orElse(content.level());
    }

    private static Optional<String> corrected(PublishedLesson lesson, Instant out, Reader reader) {
        int number = lesson.release().spec().release();
        return Optional.of(Message.of("student.corrected", number, reader.date(out)))
                .filter(message -> lesson.corrected())
                .map(reader::say);
    }

    private Stream<LineView> lines(
            ReleaseId release, PageContent content, List<ReleaseFile> files, Ways ways, Reader reader) {
        var views = new LineViews(release, contents, files, ways, content.language(), reader);
        return IntStream.range(0, content.lines().size())
                .mapToObj(i -> views.of(
                        i == 0 ? "line" : "exercise-" + i, content.lines().get(i)));
    }

    private static List<FileView> single(List<ReleaseFile> files, Predicate<FileRole> which, FileViews views) {
        return files.stream()
                .filter(file -> file.role().isOffered() && !isBundle(file) && file.role() != FileRole.ON_REQUEST)
                .filter(file -> which.test(file.role()))
                .map(views::file)
                .toList();
    }

    private static boolean isBundle(ReleaseFile file) {
        return file.role().isBundle();
    }

    private static List<PhotoView> photos(Release release, PageContent content, Ways ways) {
        return content.photos().stream()
                .map(photo -> new PhotoView(
                        photo.address(), ways.play(release.id(), photo.file()), photo.width(), photo.height()))
                .toList();
    }

    private static List<String> rights(PageContent content) {
        return Stream.of(content.composer(), content.credit(), content.rights())
                .filter(text -> !text.isBlank())
                .toList();
    }
}
