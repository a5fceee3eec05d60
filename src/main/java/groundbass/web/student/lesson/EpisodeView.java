package groundbass.web.student.lesson;

import groundbass.lesson.PageContent.ChapterContent;
import groundbass.lesson.PageContent.CourseContent;
import groundbass.publishing.ReleaseChanges;
import groundbass.text.Message;
import groundbass.web.view.EpisodeCard;
import groundbass.web.view.LinkPreview;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What a lesson's page shows. Texts are finished in the reader's language; those of the educator are in {@code
 * language}.
 *
 * @param released  when it came out, or was corrected
 * @param date      the same as words, in the zone of the series
 * @param corrected how the correction is named; empty for a first release
 * @param note      what was said of the correction; empty where nothing was
 * @param older     that its reader took an earlier release
 * @param differences in what that one differs from this
 * @param soundToFollow whether its sound is still being made
 * @param notes     HTML that is safe to show
 * @param bundle    everything in one file
 * @param files     what is read and heard, one by one
 * @param special   the same music for programs and for embossers
 * @param signIn    whether taking a file home needs a sign-in
 * @param wanted    the file for which its reader has just signed in
 * @param remembered under which id a browser remembers what is practised; empty in a preview
 * @param sitting   where the page tells what was done on it; empty in a preview, and where the site counts nothing
 * @param copy      the state of the lesson that a device would keep; empty in a preview, while sound is to follow, and where nothing
 *     may be kept
 * @param onRequest where a practice track of one's own choice is asked for; empty where none is made
 * @param picture   the path of the picture beside links to it; empty for releases that were built without one
 */
public record EpisodeView(
        String language,
        String series,
        String seriesPath,
        int number,
        String title,
        String level,
        List<String> techniques,
        String summary,
        Instant released,
        String date,
        Optional<String> corrected,
        String note,
        Optional<ReleaseChanges.Older> older,
        List<Message> differences,
        boolean soundToFollow,
        LineView line,
        List<LineView> exercises,
        String notes,
        List<TrackView> tracks,
        Optional<FileView> bundle,
        List<FileView> files,
        List<FileView> special,
        boolean signIn,
        Optional<FileView> wanted,
        List<String> rights,
        String gear,
        Optional<VideoView> video,
        List<ChapterContent> chapters,
        List<CourseContent> courses,
        Optional<EpisodeCard> earlier,
        Optional<EpisodeCard> later,
        Optional<String> remembered,
        Optional<String> sitting,
        Optional<String> copy,
        Optional<String> onRequest,
        Optional<String> picture)
        implements LinkPreview.Shown {
    @Override
    public LinkPreview preview() {
        return new LinkPreview(described(), true, picture);
    }

    /** Its summary, else what its line is. */
    public String described() {
        return summary.isBlank() ? line.facts() : summary;
    }

    /** Whether any line can be practised on the page. */
    public boolean practised() {
        return Stream.concat(Stream.of(line), exercises.stream())
                .anyMatch(one -> one.practice().isPresent());
    }

    /**
     * A line of music.
     *
     * @param id      begins the ids of its parts on the page
     * @param facts   key, meter, tempo as a player says them
     * @param opening what is told of the line as a whole, in {@code told}
     * @param practice where the page finds what to play; empty for releases that were built without it
     * @param fitted where its sheet is set anew for a screen; empty in a preview
     */
    public record LineView(
            String id,
            String title,
            String facts,
            List<PictureView> pictures,
            String told,
            String opening,
            List<BarView> bars,
            Optional<String> practice,
            Optional<String> fitted) {}

    /** @param svg markup by our own renderer; {@code kind} is the style sheet's name for the screens it is for */
    public record PictureView(String kind, String svg) {}

    /** What is told of one bar. */
    public record BarView(String id, String name, List<StepView> steps) {}

    /**
     * @param from, to the stretch it speaks of, as {@code 3:1/4}: bar and time in whole notes
     * @param whole whether that is the whole bar
     * @param language of the text: the reader's, or the educator's where these are their words
     */
    public record StepView(int bar, String from, String to, boolean whole, String language, String text) {}

    /** @param name what one hears; {@code speed} how fast, empty where that is not known */
    public record TrackView(String path, String name, String speed) {}

    /** A file to take home: what it is, of what kind, how large; {@code open} shows it in the browser, where one can. */
    public record FileView(String path, String name, String kind, String size, Optional<String> open) {}
}
