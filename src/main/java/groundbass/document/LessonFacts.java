package groundbass.document;

import java.util.List;
import java.util.Objects;

/**
 * What a student is told beside the line. All as typed.
 *
 * @param video   the address of the lesson's video; empty where there is none
 * @param gear    what is needed beside a bass: a drone, a capo, a fifth string
 * @param courses where the lesson leads on to
 * @param chapters of the video, a row each: {@code 4:05 Bar 3}
 */
public record LessonFacts(String video, String gear, List<CoursePointer> courses, String chapters) {
    public static final LessonFacts NONE = new LessonFacts("", "", List.of(), "");

    /** A course that the lesson points to. */
    public record CoursePointer(String title, String address) {
        public CoursePointer {
            Objects.requireNonNull(title);
            Objects.requireNonNull(address);
        }
    }

    public LessonFacts {
        Objects.requireNonNull(video);
        Objects.requireNonNull(gear);
        courses = List.copyOf(courses);
        chapters = Objects.requireNonNullElse(chapters, ""); // earlier documents have none
    }

    public LessonFacts withChapters(String changed) {
        return new LessonFacts(video, gear, courses, changed);
    }
}
