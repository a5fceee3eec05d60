package groundbass.audience.visit;

import java.util.List;

/**
 * What a browser tells of a while on a lesson's page; nothing of it is more than its word.
 *
 * @param release the number of the release that the page showed
 * @param lines those that were played
 * @param courses the addresses of those whose links were followed
 */
public record Sitting(int release, List<PlayedLine> lines, List<String> courses) {
    public Sitting {
        lines = List.copyOf(lines);
        courses = List.copyOf(courses);
    }
}
