package groundbass.web.desk.room;

import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.LessonFacts;

/** Tells what is to be done in each room of a lesson. */
final class RoomStates {
    private final EpisodeDocument document;
    private final PreflightView preflight;
    private final boolean out;
    private final boolean differs;

    /**
     * @param preflight what is to be said of this document before it goes out
     * @param out whether readers see the lesson
     * @param differs whether they see it otherwise than the document has it, or will
     */
    RoomStates(EpisodeDocument document, PreflightView preflight, boolean out, boolean differs) {
        this.document = document;
        this.preflight = preflight;
        this.out = out;
        this.differs = differs;
    }

    RoomState of(Room room) {
        if (preflight.blocking().stream().anyMatch(row -> room.holds(row.field()))) {
            return RoomState.OPEN;
        }
        boolean asks = preflight.asking().stream().anyMatch(row -> room.holds(row.field()));
        if (asks || room == Room.PUBLISH && differs) {
            return RoomState.LOOK;
        }
        return hasSomething(room) ? RoomState.DONE : RoomState.EMPTY;
    }

    private boolean hasSomething(Room room) {
        return switch (room) {
            case LINE, WALKTHROUGH -> !document.mainLine().isBlank();
            case EXERCISES -> !document.exercises().isEmpty();
            case SOUND ->
                !document.backingTracks().isEmpty()
                        || !document.groove().equals(GrooveSource.CHOSEN_BY_METER)
                        || !document.settings().tempos().equals(DocumentSettings.USUAL.tempos());
            case NOTES -> !document.notes().isBlank();
            case SCRIPT -> !document.script().isBlank();
            case FACTS ->
                !document.facts().equals(LessonFacts.NONE)
                        || !document.rights().statement().isBlank();
            case PUBLISH -> out;
        };
    }
}
