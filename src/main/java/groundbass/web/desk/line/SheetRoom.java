package groundbass.web.desk.line;

import groundbass.score.Line;
import groundbass.text.Message;

/**
 * What one page of the desk draws, since nobody knows what a drawing costs before it is made. A long lesson has some 200
 * bars and 2,000 notes; what is beyond this is not drawn, and stays as it was typed.
 */
public final class SheetRoom {
    private static final int MOST_NOTES = 8_000;
    private static final int MOST_BARS = 1_000;

    /** Why a line is not drawn. */
    static final Message TOO_LARGE = Message.of("desk.live.large", MOST_NOTES, MOST_BARS);

    private int notes = MOST_NOTES;
    private int bars = MOST_BARS;

    /** Whether the line is drawn; what it needs is then taken. */
    public boolean takes(Line line) {
        int itsNotes = line.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
        int itsBars = line.bars().size();
        if (itsNotes > notes || itsBars > bars) {
            return false;
        }
        notes -= itsNotes;
        bars -= itsBars;
        return true;
    }
}
