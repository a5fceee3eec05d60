package groundbass.web.desk.publish;

import groundbass.catalog.ZoneNames;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Withdrawal;
import groundbass.publishing.Seen;
import groundbass.release.ReleaseNote;
import groundbass.text.Message;
import groundbass.web.desk.calendar.ReleaseCalendar;
import groundbass.web.desk.room.RoomView;
import java.util.List;
import java.util.Optional;

/**
 * How a lesson stands, and what can be done with it.
 *
 * @param why the reason that was typed for taking it back
 * @param note what students are told of a correction, as it was typed
 * @param holders how many of them took an earlier release and agreed to be told
 * @param told what is told of it elsewhere; empty before it is out
 * @param belowVideo what stands below its video elsewhere
 * @param hour as it was typed
 * @param meaning what moment that is, or why it is none
 */
public record PublishView(
        RoomView room,
        EpisodeState state,
        String why,
        ReleaseNote note,
        int holders,
        ReleaseCalendar calendar,
        Optional<LessonNews.Told> told,
        String belowVideo,
        Hour hour,
        Optional<Message> meaning) {
    /** Whether it was brought out, also where it was taken back since. */
    public boolean out() {
        return state instanceof EpisodeState.Published;
    }

    /** Whether it is a draft that nothing is promised of. */
    public boolean draft() {
        return state instanceof EpisodeState.Unscheduled;
    }

    /** What a form of this page says of how the lesson stood. */
    public String seen() {
        return Seen.of(state).token();
    }

    /** Whether it is to go out as soon as its files are there, so that nothing has to be pressed any more. */
    public boolean making() {
        return state instanceof EpisodeState.Scheduled promise && promise.isAtOnce();
    }

    /** Whether pressing the button again would come to something: something was written since, or the build failed. */
    public boolean worthPressing() {
        return !making() || room.differs().isPresent() || calendar.standing().failed();
    }

    public Optional<Withdrawal> withdrawal() {
        return state instanceof EpisodeState.Published published ? published.withdrawal() : Optional.empty();
    }

    public List<String> zones() {
        return ZoneNames.all();
    }
}
