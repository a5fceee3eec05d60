package groundbass.web.desk.room;

import groundbass.text.Message;
import groundbass.web.desk.calendar.EpisodeStatus;
import groundbass.web.view.FieldProblems;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What every room of a lesson shows.
 *
 * @param path of the lesson on the desk
 * @param here of the room, where its form goes
 * @param language of what students get, as a tag
 * @param savedBy who saved last what is written, where that is not who reads the page
 * @param base what the room said when it was opened, as {@link RoomPage#base} names it
 * @param differs in what the draft differs from what readers see or will see
 * @param rooms all of them
 * @param preflight what is to be said of the lesson before it goes out
 * @param others what another window saved in the meantime, where that differs from what was typed here
 */
public record RoomView(
        Room room,
        String path,
        String here,
        String title,
        String series,
        int number,
        String language,
        EpisodeStatus standing,
        Optional<Instant> savedAt,
        Optional<String> savedBy,
        String base,
        Optional<Message> differs,
        List<RoomRow> rooms,
        PreflightView preflight,
        FieldProblems problems,
        List<RoomField> others) {
    public Message name() {
        return room.title();
    }

    /** The room that one came through; empty in the first. */
    public Optional<RoomRow> before() {
        return room.before().map(this::row);
    }

    public Optional<RoomRow> after() {
        return room.after().map(this::row);
    }

    private RoomRow row(Room wanted) {
        return rooms.get(wanted.ordinal());
    }

    /** What is to be mended or decided in this room before the lesson goes out. */
    public List<PreflightView.Row> remarks() {
        return preflight.holding().stream()
                .filter(row -> room.holds(row.field()))
                .toList();
    }

    public RoomView with(FieldProblems found) {
        return new RoomView(
                room, path, here, title, series, number, language, standing, savedAt, savedBy, base, differs, rooms,
                preflight, found, others);
    }

    /** For a form that still begins from what it began from. */
    RoomView withBase(String known) {
        return new RoomView(
                room, path, here, title, series, number, language, standing, savedAt, savedBy, known, differs, rooms,
                preflight, problems, others);
    }

    RoomView with(List<RoomField> stored) {
        return new RoomView(
                room, path, here, title, series, number, language, standing, savedAt, savedBy, base, differs, rooms,
                preflight, problems, stored);
    }
}
