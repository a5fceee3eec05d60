package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import java.util.Optional;

/** Where a slide, a hammer or a pull comes from: the note before it on its string, which may sound to the end of the bar before. */
public final class Arrivals {
    private Arrivals() {}

    public static Optional<At> source(At arrival, Stage stage) {
        return stage.notes(arrival.bar()).stream()
                .filter(at -> at.note().string() == arrival.note().string()
                        && at.note().onset().isBefore(arrival.note().onset()))
                .reduce((one, two) -> two)
                .or(() -> overBarLine(arrival, stage));
    }

    private static Optional<At> overBarLine(At arrival, Stage stage) {
        int before = arrival.bar() - 1;
        boolean first = arrival.note()
                .onset()
                .equals(stage.timeline().whole(arrival.bar()).from());
        return first && stage.timeline().has(before)
                ? stage.notes(before).stream()
                        .filter(at -> at.note().string() == arrival.note().string()
                                && at.note()
                                        .end()
                                        .equals(stage.timeline().whole(before).to()))
                        .findFirst()
                : Optional.empty();
    }
}
