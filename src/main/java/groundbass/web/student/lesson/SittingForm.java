package groundbass.web.student.lesson;

import groundbass.audience.visit.PlayedLine;
import groundbass.audience.visit.Sitting;
import groundbass.lesson.PageContent;
import groundbass.lesson.PageContent.CourseContent;
import groundbass.lesson.PageContent.LineContent;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a browser tells of a while on a page: for each line one text, {@code line,4,5.6.7} (its name, how many quarters were
 * played, which bars were repeated), and the addresses of courses. What the lesson does not have is passed over, for a script has
 * made it up or was written for another release.
 */
final class SittingForm {
    /** Texts of one kind that are read. */
    private static final int MOST = 50;

    private static final Pattern PLAYED =
            Pattern.compile("(line|exercise-([1-9][0-9]?)),([0-4]),((?:[0-9]{1,3}(?:\\.[0-9]{1,3}){0,400})?)");

    private final PageContent content;
    private final int release;

    SittingForm(PageContent content, int release) {
        this.content = content;
        this.release = release;
    }

    Sitting read(List<String> played, List<String> courses) {
        return new Sitting(
                release,
                played.stream().limit(MOST).flatMap(text -> line(text).stream()).toList(),
                courses.stream()
                        .limit(MOST)
                        .filter(address -> content.courses().stream()
                                .map(CourseContent::address)
                                .anyMatch(address::equals))
                        .distinct()
                        .toList());
    }

    private Optional<PlayedLine> line(String text) {
        var told = PLAYED.matcher(text);
        if (!told.matches()) {
            return Optional.empty();
        }
        int place = told.group(2) == null ? 0 : Integer.parseInt(told.group(2));
        return content.lines().stream()
                .skip(place)
                .findFirst()
                .map(line -> new PlayedLine(told.group(1), Integer.parseInt(told.group(3)), bars(told.group(4), line)));
    }

    /** Bars have numbers from 1, or from 0 where the line begins with a pickup. */
    private static Set<Integer> bars(String text, LineContent line) {
        return Stream.of(text.split("\\."))
                .filter(number -> !number.isEmpty())
                .map(Integer::valueOf)
                .filter(bar -> bar <= line.bars())
                .collect(Collectors.toSet());
    }
}
