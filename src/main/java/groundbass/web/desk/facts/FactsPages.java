package groundbass.web.desk.facts;

import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.LessonFacts.CoursePointer;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.room.Room;
import groundbass.web.desk.room.RoomField;
import groundbass.web.desk.room.RoomForm;
import groundbass.web.desk.room.RoomPage;
import groundbass.web.desk.room.RoomView;
import groundbass.web.desk.room.Rooms;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Routes;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** The room of what a lesson says beside its line: its name and level, gear, video, courses, and whose music it is. */
public final class FactsPages implements PageGroup, RoomPage {
    private final DeskContext desk;
    private final Rooms rooms;

    public FactsPages(DeskContext desk, Rooms rooms) {
        this.desk = desk;
        this.rooms = rooms;
    }

    @Override
    public void addTo(Routes routes) {
        rooms.open(routes, this);
    }

    @Override
    public Room room() {
        return Room.FACTS;
    }

    @Override
    public List<RoomField> fields(EpisodeDocument document) {
        var fields = new ArrayList<RoomField>(List.of(
                RoomField.of("title", "desk.episode.title", document.title()),
                RoomField.of("level", "desk.episode.level", document.level().code()),
                RoomField.of("summary", "desk.editor.summary", document.summary()),
                RoomField.of(
                        "settings.language",
                        "desk.editor.language",
                        document.settings().language()),
                RoomField.of("facts.gear", "desk.facts.gear", document.facts().gear()),
                RoomField.of("facts.video", "desk.facts.video", document.facts().video())));
        fields.addAll(courses(document));
        var rights = document.rights();
        fields.add(RoomField.of(
                "rights.clearance", "desk.facts.clearance", rights.clearance().word()));
        fields.add(RoomField.of("rights.composer", "desk.editor.composer", rights.composer()));
        fields.add(RoomField.of("rights.credit", "desk.editor.credit", rights.credit()));
        fields.add(RoomField.of("rights.statement", "desk.editor.statement", rights.statement()));
        var licence = rights.licence();
        fields.add(RoomField.of("rights.licence.reference", "desk.licence.reference", licence.reference()));
        fields.add(RoomField.of("rights.licence.from", "desk.licence.from", licence.from()));
        fields.add(RoomField.of("rights.licence.until", "desk.licence.until", licence.until()));
        return List.copyOf(fields);
    }

    /** Row by row, as the page has them. */
    private static List<RoomField> courses(EpisodeDocument document) {
        var courses = FactsView.rows(document.facts());
        return Stream.iterate(0, i -> i < courses.size(), i -> i + 1)
                .flatMap(i -> Stream.of(
                        course("title", i, courses.get(i), CoursePointer::title),
                        course("address", i, courses.get(i), CoursePointer::address)))
                .toList();
    }

    private static RoomField course(String part, int row, CoursePointer course, Function<CoursePointer, String> of) {
        return new RoomField(
                "course-" + part + "-" + row, Message.of("desk.facts.course." + part, row + 1), of.apply(course));
    }

    @Override
    public RoomForm read(Context ctx) {
        return FactsForm.read(ctx);
    }

    @Override
    public void show(Context ctx, Episode episode, RoomView room, EpisodeDocument document) {
        desk.pages().show(ctx, "desk/facts", FactsView.of(room.with(problems(document)), document));
    }

    /** Of all that keeps a document from being fixed, what belongs to this room. */
    private static FieldProblems problems(EpisodeDocument document) {
        return new FieldProblems(DocumentCheck.problems(document).stream()
                .filter(problem ->
                        Room.of(problem.field()).filter(Room.FACTS::equals).isPresent())
                .toList());
    }
}
