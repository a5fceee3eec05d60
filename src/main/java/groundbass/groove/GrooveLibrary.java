package groundbass.groove;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Technique;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * The grooves that come with the program, each a text of four bars beside this class (rule: four-bar-units), and a plain one
 * for every other meter.
 */
public final class GrooveLibrary {
    private static final List<String> FILES = List.of(
            "slap-funk",
            "pocket-sixteenths",
            "straight-rock",
            "half-time",
            "swing-ride",
            "shuffle",
            "four-on-the-floor",
            "bossa",
            "one-drop",
            "twelve-eight-blues",
            "waltz",
            "seven-eight",
            "five-four",
            "six-eight",
            "low-toms");
    private static final List<Groove> ALL =
            FILES.stream().map(GrooveLibrary::load).toList();
    private static final Set<Technique> SLAPPED =
            Set.of(Technique.SLAP, Technique.POP, Technique.THUMB_DOWN, Technique.THUMB_UP);

    private GrooveLibrary() {}

    public static List<Groove> all() {
        return ALL;
    }

    public static Optional<Groove> named(String name) {
        return ALL.stream()
                .filter(groove -> groove.name().equalsIgnoreCase(name))
                .findFirst();
    }

    /** A fitting groove for the start of a line, by its meter, feel and style. */
    public static Groove suited(Line line) {
        return suited(line.inForce().get(0));
    }

    static Groove suited(InForce inForce) {
        var meter = inForce.meter();
        if (!meter.equals(Meter.COMMON)) {
            return ofMeter(meter);
        }
        var feel = inForce.feel();
        boolean swungEighths = feel.swing()
                .filter(swing -> swing.unit().equals(Fraction.of(1, 8)))
                .isPresent();
        if (feel.halfTime()) {
            return named("Half-time").orElseThrow();
        }
        if (swungEighths) {
            return named("Swing ride").orElseThrow();
        }
        return named(SLAPPED.contains(inForce.style()) ? "Slap funk" : "Pocket sixteenths")
                .orElseThrow();
    }

    /** A groove of exactly this meter and its groups: from the library, else {@link #plain}. */
    static Groove ofMeter(Meter meter) {
        return ALL.stream()
                .filter(groove -> groove.meter().equals(meter))
                .findFirst()
                .orElseGet(() -> plain(meter));
    }

    /** Hat on every count, kick on the first beat, snare on the last: plays in any meter. */
    static Groove plain(Meter meter) {
        int counts = meter.counts();
        var kick = new ArrayList<>(Collections.nCopies(counts, Stroke.NONE));
        kick.set(0, Stroke.NORMAL);
        var snare = new ArrayList<>(Collections.nCopies(counts, Stroke.NONE));
        int lastBeat = counts - meter.beats().get(meter.beats().size() - 1);
        if (lastBeat > 0) {
            snare.set(lastBeat, Stroke.NORMAL);
        }
        var rows = new EnumMap<Piece, List<Stroke>>(Piece.class);
        rows.put(Piece.KICK, kick);
        rows.put(Piece.SNARE, snare);
        rows.put(Piece.HAT, Collections.nCopies(counts, Stroke.NORMAL));
        return new Groove("", meter, counts, rows);
    }

    private static Groove load(String file) {
        try (var in = GrooveLibrary.class.getResourceAsStream(file + ".groove")) {
            var reading = GrooveText.read(new String(in.readAllBytes(), StandardCharsets.UTF_8));
            return reading.groove().orElseThrow(() -> new IllegalStateException(file + ": " + reading.problems()));
        } catch (IOException broken) {
            throw new UncheckedIOException(broken);
        }
    }
}
