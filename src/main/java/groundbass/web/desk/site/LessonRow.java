package groundbass.web.desk.site;

import groundbass.text.Message;
import groundbass.web.desk.calendar.EpisodeStatus;
import java.util.List;
import java.util.Optional;

/**
 * A lesson in a list of the desk: where it stands, what is in the way of its hour, and in what its draft differs from
 * what is fixed.
 */
public record LessonRow(
        String id,
        String path,
        int number,
        String title,
        EpisodeStatus standing,
        List<Message> troubles,
        Optional<Message> differs) {}
