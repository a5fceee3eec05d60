package groundbass.web.student.lesson;

import java.time.Instant;
import java.util.Optional;

/**
 * What is said in place of a lesson that was taken back.
 *
 * @param path of its series, where that has a page
 * @param why may be empty
 */
public record WithdrawnLesson(String series, int number, Optional<String> path, Instant at, String why) {}
