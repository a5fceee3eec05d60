package groundbass.document;

import java.util.List;
import java.util.Objects;

/**
 * The drums under the line: a drum grid as typed, or where that is blank a ready one by its name; both blank: the
 * program chooses by meter and feel.
 *
 * @param feel how much they are played as people play, one of {@link #FEELS}; the first where it is none of them
 */
public record GrooveSource(String name, String text, String feel) {
    /** In percent: as people play, half as much, as a machine plays. */
    public static final List<String> FEELS = List.of("100", "50", "0");

    public static final GrooveSource CHOSEN_BY_METER = new GrooveSource("", "");

    public GrooveSource {
        Objects.requireNonNull(name);
        Objects.requireNonNull(text);
        feel = FEELS.contains(feel) ? feel : FEELS.get(0);
    }

    /** Played as people play. */
    public GrooveSource(String name, String text) {
        this(name, text, FEELS.get(0));
    }

    public int feelPercent() {
        return Integer.parseInt(feel);
    }
}
