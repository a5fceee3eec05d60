package groundbass.web.desk.room;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.text.Message;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class RoomStatesTest {
    private static final EpisodeDocument BLANK = EpisodeDocument.titled("Blank", Level.BEGINNER);

    @ParameterizedTest
    @CsvSource({
        "mainLine,         LINE",
        "exercises[1],     EXERCISES",
        "exercises,        EXERCISES",
        "groove,           SOUND",
        "settings.tempos,  SOUND",
        "settings.rounds,  SOUND",
        "notes,            NOTES",
        "walkthrough,      WALKTHROUGH",
        "title,            FACTS",
        "summary,          FACTS",
        "facts.video,      FACTS",
        "rights.clearance, FACTS",
        "settings.language, FACTS",
        "imprint,          PUBLISH",
        "address,          PUBLISH"
    })
    void whatBlocksIsShownAtTheRoomWhereItIsMended(String field, Room room) {
        var states = states(BLANK, rows(field), List.of(), false);
        assertThat(rooms(states, RoomState.OPEN)).containsExactly(room);
        assertThat(rooms(states(BLANK, List.of(), rows(field), false), RoomState.LOOK))
                .containsExactly(room);
    }

    @Test
    void whatBlocksIsShownBeforeWhatAsks() {
        var states = states(BLANK, rows("notes"), rows("notes", "groove"), false);
        assertThat(states.of(Room.NOTES)).isEqualTo(RoomState.OPEN);
        assertThat(states.of(Room.SOUND)).isEqualTo(RoomState.LOOK);
    }

    @ParameterizedTest
    @EnumSource(Room.class)
    void inABlankLessonNothingIsDone(Room room) {
        assertThat(states(BLANK, List.of(), List.of(), false).of(room)).isEqualTo(RoomState.EMPTY);
    }

    @Test
    void aRoomWithSomethingInItOfWhichNothingIsToBeSaidIsDone() {
        var written = BLANK.edit()
                .mainLine(new LineSource("", "bar 1\n1-4 E5\n"))
                .notes("Relax.")
                .done();
        assertThat(rooms(states(written, List.of(), List.of(), false), RoomState.DONE))
                .containsExactly(Room.LINE, Room.NOTES, Room.WALKTHROUGH);
    }

    @Test
    void aDraftThatDiffersFromWhatIsOutNeedsALook() {
        assertThat(new RoomStates(BLANK, preflight(List.of(), List.of()), true, false).of(Room.PUBLISH))
                .isEqualTo(RoomState.DONE);
        assertThat(states(BLANK, List.of(), List.of(), true).of(Room.PUBLISH)).isEqualTo(RoomState.LOOK);
    }

    private static RoomStates states(
            EpisodeDocument document,
            List<PreflightView.Row> blocking,
            List<PreflightView.Row> asking,
            boolean differs) {
        return new RoomStates(document, preflight(blocking, asking), false, differs);
    }

    private static PreflightView preflight(List<PreflightView.Row> blocking, List<PreflightView.Row> asking) {
        return new PreflightView(blocking, asking, List.of(), "", List.of());
    }

    private static List<Room> rooms(RoomStates states, RoomState state) {
        return Stream.of(Room.values()).filter(room -> states.of(room) == state).toList();
    }

    private static List<PreflightView.Row> rows(String... fields) {
        return Arrays.stream(fields)
                .map(field -> new PreflightView.Row(Message.of("desk.save"), field, ""))
                .toList();
    }
}
