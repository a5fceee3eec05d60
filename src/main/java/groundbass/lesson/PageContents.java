package groundbass.lesson;

import groundbass.lesson.PageContent.ChapterContent;
import groundbass.lesson.PageContent.CourseContent;
import groundbass.lesson.PageContent.LineContent;
import groundbass.lesson.PageContent.PhotoContent;
import groundbass.lesson.PageContent.Picture;
import groundbass.lesson.PageContent.StepContent;
import groundbass.lesson.PageContent.ToldContent;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.script.Chapters;
import groundbass.walkthrough.Retelling;
import groundbass.walkthrough.Step;
import java.util.List;

/** Makes what a page says of a lesson. */
public final class PageContents {
    private PageContents() {}

    /** @param photos the pictures of the educator's own that its notes show */
    public static PageContent of(Lesson lesson, List<LineContent> lines, List<PhotoContent> photos, Sheets sheets) {
        var document = lesson.document();
        return new PageContent(
                document.title(),
                document.level().code(),
                document.summary(),
                document.notes(),
                document.rights().composer(),
                document.rights().credit(),
                document.rights().statement(),
                document.settings().language(),
                lesson.techniques(),
                lines,
                document.facts().gear(),
                document.facts().video(),
                document.facts().courses().stream()
                        .map(course -> new CourseContent(course.title(), course.address()))
                        .toList(),
                Chapters.read(document.facts().chapters()).chapters().stream()
                        .map(chapter -> new ChapterContent(chapter.time(), chapter.title()))
                        .toList(),
                NotePieces.of(document.notes(), lesson.main(), sheets),
                photos);
    }

    /** @param others its walkthrough in other languages */
    public static LineContent line(Line line, List<Picture> pictures, Retelling walkthrough, List<ToldContent> others) {
        var header = line.header();
        return new LineContent(
                header.title(),
                header.key().toString(),
                header.meter().toString(),
                header.tempo().perMinute(),
                (int) line.bars().stream().filter(bar -> !bar.isPickup()).count(),
                pictures,
                steps(walkthrough),
                others);
    }

    /** @param language as a tag of BCP 47 */
    public static ToldContent told(String language, Retelling walkthrough) {
        return new ToldContent(language, steps(walkthrough));
    }

    private static List<StepContent> steps(Retelling walkthrough) {
        return walkthrough.read().stream().map(PageContents::step).toList();
    }

    private static StepContent step(Step step) {
        var passage = step.passage();
        return new StepContent(passage.from().bar(), text(passage.from()), text(passage.to()), step.text());
    }

    private static String text(Position position) {
        return position.bar() + ":" + position.at();
    }
}
