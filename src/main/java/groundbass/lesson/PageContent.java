package groundbass.lesson;

import java.util.List;
import java.util.Objects;

/**
 * What an episode's page says, frozen with its release.
 *
 * @param notes Markdown as typed
 * @param techniques the plucking hand's techniques in the main line, by line text's words
 * @param lines the main line first, then the exercises
 * @param gear what is needed beside a bass; empty where nothing is
 * @param pieces of the sheet that the notes show
 * @param photos the educator's own pictures that the notes show
 * @param video the https address of the lesson's video; empty where there is none
 * @param chapters of the video, in order
 */
public record PageContent(
        String title,
        String level,
        String summary,
        String notes,
        String composer,
        String credit,
        String rights,
        String language,
        List<String> techniques,
        List<LineContent> lines,
        String gear,
        String video,
        List<CourseContent> courses,
        List<ChapterContent> chapters,
        List<PieceContent> pieces,
        List<PhotoContent> photos) {
    /**
     * One line as the page shows it.
     *
     * @param tempo beats a minute
     * @param pictures the names of its pictures among the release's files, narrowest first
     * @param steps the walkthrough in the lesson's language
     * @param others the same in the other languages that the program speaks; none in releases of earlier programs
     */
    public record LineContent(
            String title,
            String key,
            String meter,
            int tempo,
            int bars,
            List<Picture> pictures,
            List<StepContent> steps,
            List<ToldContent> others) {
        public LineContent {
            pictures = List.copyOf(pictures);
            steps = List.copyOf(steps);
            others = List.copyOf(Objects.requireNonNullElse(others, List.of()));
        }
    }

    /** A walkthrough in another language, step by step as in the lesson's own; the educator's words are left as they are. */
    public record ToldContent(String language, List<StepContent> steps) {
        public ToldContent {
            steps = List.copyOf(steps);
        }
    }

    /** A picture of the sheet for readers whose screen is at least so wide, in CSS pixels. */
    public record Picture(String file, int fromWidth) {}

    /**
     * A step of the walkthrough.
     *
     * @param bar the number of the bar that it begins in
     * @param from, to the stretch it speaks of: bar number and time in whole notes, {@code 3:1/4}; half-open
     */
    public record StepContent(int bar, String from, String to, String text) {}

    /** A course that the lesson points to, outside this site. */
    public record CourseContent(String title, String address) {}

    /** A chapter of the video: when it begins, as people write it ({@code 4:05}), and what it is. */
    public record ChapterContent(String time, String title) {}

    /**
     * A piece of the sheet in the notes.
     *
     * @param range as the notes name it: {@code bars:3-4}
     * @param svg one drawing or several, one under the other
     */
    public record PieceContent(String range, String svg) {}

    /**
     * A picture of the educator's own in the notes.
     *
     * @param address as the notes name it
     * @param file its name among the release's files
     * @param width, height in pixels
     */
    public record PhotoContent(String address, String file, int width, int height) {}

    /** Releases of earlier programs say nothing of gear, video, courses, chapters, pieces and photos. */
    public PageContent {
        techniques = List.copyOf(techniques);
        lines = List.copyOf(lines);
        gear = Objects.requireNonNullElse(gear, "");
        video = Objects.requireNonNullElse(video, "");
        courses = List.copyOf(Objects.requireNonNullElse(courses, List.of()));
        chapters = List.copyOf(Objects.requireNonNullElse(chapters, List.of()));
        pieces = List.copyOf(Objects.requireNonNullElse(pieces, List.of()));
        photos = List.copyOf(Objects.requireNonNullElse(photos, List.of()));
    }
}
