package groundbass.web.student.account;

import groundbass.audience.student.PractisedLine;
import groundbass.catalog.episode.EpisodeId;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * What a browser tells of practising, one text for each line: lesson, line, day, tempo, and the two ends of the passage,
 * with a comma between two. What is no such text is passed over, for a script has made it.
 */
final class PractisedForm {
    private static final Pattern MARK =
            Pattern.compile("([a-z0-9]{16}),(line|exercise-[0-9]{1,2}),(\\d{4}-\\d{2}-\\d{2})"
                    + ",(\\d{1,3}),([0-9.ea&x]{0,12}),([0-9.ea&x]{0,12})");
    /** A day further off comes from a clock that is wrong. */
    private static final int YEARS = 20;

    private PractisedForm() {}

    static List<PractisedLine> read(List<String> marks, LocalDate today) {
        return marks.stream().flatMap(mark -> read(mark, today).stream()).toList();
    }

    /** It may be tomorrow already where the student is. */
    private static Optional<PractisedLine> read(String text, LocalDate today) {
        var mark = MARK.matcher(text);
        if (!mark.matches()) {
            return Optional.empty();
        }
        return day(mark.group(3))
                .filter(day -> day.isAfter(today.minusYears(YEARS)) && !day.isAfter(today.plusDays(1)))
                .flatMap(day -> EpisodeId.parse(mark.group(1))
                        .map(episode -> new PractisedLine(
                                episode,
                                mark.group(2),
                                day,
                                Integer.parseInt(mark.group(4)),
                                mark.group(5),
                                mark.group(6))));
    }

    private static Optional<LocalDate> day(String text) {
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
