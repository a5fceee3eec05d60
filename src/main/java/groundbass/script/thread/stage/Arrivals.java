package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import java.util.Optional;

/** Where a slide, a hammer or a pull comes from: the note before it on its string, in its bar. */
public final class Arrivals {
    private Arrivals() {}

    public static Optional<At> source(At arrival, Stage stage) {
        return stage.notes(arrival.bar()).stream()
                .filter(at -> at.note().string() == arrival.note().string()
                        && at.note().onset().isBefore(arrival.note().onset()))
                .reduce((one, two) -> two);
    }
}
