package groundbass.web.desk.publish;

import groundbass.text.Message;
import groundbass.web.desk.calendar.ReleaseCalendar;
import groundbass.web.desk.room.RoomView;
import groundbass.web.view.Zones;
import java.util.List;
import java.util.Optional;

/**
 * How a lesson stands, and what can be done with it.
 *
 * @param told what is told of it elsewhere; empty before it is out
 * @param hour as it was typed
 * @param meaning what moment that is, or why it is none
 */
public record PublishView(
        RoomView room, ReleaseCalendar calendar, Optional<Telling.Told> told, Hour hour, Optional<Message> meaning) {
    public boolean out() {
        return calendar.out();
    }

    public List<String> zones() {
        return Zones.with(hour.zone());
    }
}
