package groundbass.engraving.options;

import groundbass.score.Arrival;
import groundbass.score.Technique;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;

/**
 * What stands for each technique. Usage differs from publisher to publisher (rule: technique-letters), so this is the
 * educator's choice, and every sheet explains what it uses.
 */
public record TechniqueLetters(Map<Technique, Letter> techniques, Map<Arrival.Kind, String> arrivals) {
    /** The strokes of the thumb through a string; the font's bow signs serve plucked strings as well. */
    public enum Stroke {
        DOWN,
        UP
    }

    /** A text, or a stroke sign. */
    public sealed interface Letter {
        /** Whether it stands at every note, or only where the technique begins. */
        boolean everyNote();

        /** @param text empty for a technique that goes without saying */
        record Text(String text, boolean everyNote) implements Letter {}

        /** A text with a dashed line as far as the technique lasts. */
        record Spanned(String text) implements Letter {
            @Override
            public boolean everyNote() {
                return false;
            }
        }

        /** A sign at every note. */
        record Drawn(Stroke stroke) implements Letter {
            @Override
            public boolean everyNote() {
                return true;
            }
        }
    }

    public TechniqueLetters {
        for (var technique : Technique.values()) {
            Objects.requireNonNull(techniques.get(technique), technique.word());
        }
        for (var kind : Arrival.Kind.values()) {
            Objects.requireNonNull(arrivals.get(kind), kind.word());
        }
        techniques = Map.copyOf(techniques);
        arrivals = Map.copyOf(arrivals);
    }

    /** T for the thumb, P for the pop, H and P on slurs. */
    public static TechniqueLetters usual() {
        var letters = new EnumMap<Technique, Letter>(Technique.class);
        for (var technique : Technique.values()) {
            letters.put(technique, usual(technique));
        }
        return new TechniqueLetters(
                letters,
                new EnumMap<>(Map.of(Arrival.Kind.HAMMER, "H", Arrival.Kind.PULL, "P", Arrival.Kind.SLIDE, "sl.")));
    }

    public TechniqueLetters with(Technique technique, Letter letter) {
        var changed = new EnumMap<>(techniques);
        changed.put(technique, letter);
        return new TechniqueLetters(changed, arrivals);
    }

    public TechniqueLetters with(Arrival.Kind kind, String letter) {
        var changed = new EnumMap<>(arrivals);
        changed.put(kind, letter);
        return new TechniqueLetters(techniques, changed);
    }

    public Letter of(Technique technique) {
        return techniques.get(technique);
    }

    public String of(Arrival.Kind kind) {
        return arrivals.get(kind);
    }

    private static Letter usual(Technique technique) {
        return switch (technique) {
            case SLAP -> new Letter.Text("T", true);
            case POP -> new Letter.Text("P", true);
            case THUMB -> new Letter.Text("Th", false);
            case FINGER -> new Letter.Text("", false);
            case INDEX -> new Letter.Text("i", true);
            case MIDDLE -> new Letter.Text("m", true);
            case THUMB_DOWN -> new Letter.Drawn(Stroke.DOWN);
            case THUMB_UP -> new Letter.Drawn(Stroke.UP);
            case PICK -> new Letter.Text("Pk", false);
            case PLUCK -> new Letter.Text("", false);
            case TAP -> new Letter.Text("+", true);
            case MUTE -> new Letter.Spanned("P.M.");
            case RAKE -> new Letter.Spanned("rake");
            case LEFT_HAND -> new Letter.Text("LH", true);
        };
    }
}
