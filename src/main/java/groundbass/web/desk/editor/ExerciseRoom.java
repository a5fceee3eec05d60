package groundbass.web.desk.editor;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.line.LinePreview;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/** The room of one exercise, with the way to the others. */
final class ExerciseRoom implements RoomPage {
    private final DeskContext desk;
    private final LinePreviews previews;
    private final int place;

    /** @param place of the exercise, from 0 */
    ExerciseRoom(DeskContext desk, LinePreviews previews, int place) {
        this.desk = desk;
        this.previews = previews;
        this.place = place;
    }

    @Override
    public Room room() {
        return Room.EXERCISES;
    }

    @Override
    public String way() {
        return room().way() + "/" + (place + 1);
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        var exercise = in(document);
        return List.of(
                new RoomField("exercise-name", Message.of("desk.editor.exercise.name"), exercise.name()),
                new RoomField(
                        "exercises-" + place, Message.of("desk.editor.exercise.text", place + 1), exercise.text()));
    }

    private LineSource in(EpisodeDocument document) {
        return place < document.exercises().size() ? document.exercises().get(place) : LineSource.EMPTY;
    }

    /** What was typed of an exercise that another window has removed meanwhile becomes one again. */
    @Override
    public RoomForm read(Context ctx) {
        var typed = new LineSource(
                FormParameters.text(ctx, "exerciseName").strip(), FormParameters.text(ctx, "exerciseText"));
        return episode -> before -> {
            var exercises = new ArrayList<>(before.exercises());
            if (place < exercises.size()) {
                exercises.set(place, typed);
            } else {
                exercises.add(typed);
            }
            return before.edit().exercises(exercises).done();
        };
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        var exercise = in(document);
        String field = "exercises-" + place;
        var live = previews.of(ctx, episode, document, field, exercise.text());
        var all = IntStream.range(0, document.exercises().size())
                .mapToObj(i -> new Row(
                        i + 1,
                        document.exercises().get(i).name(),
                        room.path() + Room.EXERCISES.way() + "/" + (i + 1),
                        i == place))
                .toList();
        desk.pages()
                .show(
                        ctx,
                        "desk/exercise",
                        new View(
                                room, all, place + 1, field, exercise.name(), exercise.text(), live, LineExample.TEXT));
    }

    /** An exercise in the list of them. */
    public record Row(int number, String name, String way, boolean here) {}

    /**
     * @param number of the exercise that is written here, from 1
     * @param field the id of its text
     */
    public record View(
            RoomView room,
            List<Row> all,
            int number,
            String field,
            String name,
            String text,
            LinePreview live,
            String example) {}
}
