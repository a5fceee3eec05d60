package groundbass.web.student.file;

import groundbass.release.WantedTrack;
import java.util.Optional;
import java.util.function.UnaryOperator;

/** What a reader chose of the practice tracks that are made on request. */
final class TrackForm {
    private TrackForm() {}

    /** A tempo that is not made becomes the nearest that is; empty where something else was typed. */
    static Optional<WantedTrack> of(UnaryOperator<String> field) {
        String line = "line".equals(field.apply("line")) ? "" : field.apply("line") + "-";
        return percent(field.apply("percent"))
                .flatMap(percent ->
                        WantedTrack.named(line + field.apply("what") + "-" + percent + "." + field.apply("as")));
    }

    private static Optional<Integer> percent(String typed) {
        if (typed == null || !typed.strip().matches("[0-9]{1,9}([.,][0-9]{1,9})?")) {
            return Optional.empty();
        }
        long percent = Math.round(Double.parseDouble(typed.strip().replace(',', '.')));
        return Optional.of((int) Math.max(WantedTrack.SLOWEST, Math.min(WantedTrack.FASTEST, percent)));
    }
}
