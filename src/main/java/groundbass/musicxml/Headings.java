package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Swing;
import groundbass.score.Tempo;
import groundbass.writing.WrittenBar;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What stands over the beginning of a bar: section, tempo, feel, and that the tempo falls (rule: section-and-tempo). */
final class Headings {
    /** A letter, or a letter and a figure, is one to rehearse by. */
    private static final Pattern REHEARSAL = Pattern.compile("[A-Z]\\d?");

    private static final List<Shape> SHAPES = shapes();

    private final List<WrittenBar> bars;
    private final DirectionsByBar moments;

    /** A note shape that a metronome mark may show, longest first. */
    private record Shape(String name, int dots, Fraction length) {}

    private Headings(List<WrittenBar> bars, DirectionsByBar moments) {
        this.bars = bars;
        this.moments = moments;
    }

    static void add(List<WrittenBar> bars, DirectionsByBar moments) {
        var headings = new Headings(bars, moments);
        for (int i = 0; i < bars.size(); i++) {
            headings.add(i);
        }
    }

    private void add(int index) {
        var bar = bars.get(index).bar();
        var changes = bar.changes();
        changes.section().ifPresent(name -> moments.add(index, bar.from(), DirectionElement.above(section(name))));
        if (index == 0 || changes.tempo().isPresent()) {
            moments.add(index, bar.from(), tempo(bars.get(index).inForce().tempo()));
        } else if (fellBefore(index)) {
            moments.add(index, bar.from(), offset -> arrived(index));
        }
        boolean isSaid =
                index == 0 ? !feel(index).equals(Feel.STRAIGHT) : changes.feel().isPresent();
        if (isSaid) {
            moments.add(index, bar.from(), feel(feel(index)));
        }
        changes.slowingTo().ifPresent(to -> slowing(index, bar, to));
    }

    private Feel feel(int index) {
        return bars.get(index).inForce().feel();
    }

    private static Node section(String name) {
        var mark = Node.text("rehearsal", name);
        return mark.with("enclosure", REHEARSAL.matcher(name).matches() ? "square" : "none");
    }

    private static DirectionElement tempo(Tempo tempo) {
        var metronome = new ArrayList<>(beat(tempo.beat()));
        metronome.add(Node.text("per-minute", tempo.perMinute()));
        return DirectionElement.above(Node.of("metronome", metronome)).sounding(sound(tempo));
    }

    private static Node sound(Tempo tempo) {
        return Node.empty("sound").with("tempo", decimal(tempo.quartersPerMinute()));
    }

    /** A beat is counted in 64ths or longer steps, so its decimals come to an end. */
    private static String decimal(Fraction value) {
        return BigDecimal.valueOf(value.numerator())
                .divide(BigDecimal.valueOf(value.denominator()))
                .toPlainString();
    }

    /** The beat as one shape, or as several that are tied. */
    private static List<Node> beat(Fraction beat) {
        var nodes = new ArrayList<Node>();
        var left = beat;
        while (left.isPositive()) {
            var shape = longestWithin(left);
            if (left.equals(beat)) {
                nodes.addAll(unit(shape));
            } else {
                nodes.add(Node.of("beat-unit-tied", unit(shape)));
            }
            left = left.minus(shape.length());
        }
        return nodes;
    }

    private static Shape longestWithin(Fraction left) {
        return SHAPES.stream()
                .filter(shape -> !shape.length().isAfter(left))
                .findFirst()
                .orElseThrow();
    }

    private static List<Node> unit(Shape shape) {
        return Stream.concat(
                        Stream.of(Node.text("beat-unit", shape.name())),
                        Stream.generate(() -> Node.empty("beat-unit-dot")).limit(shape.dots()))
                .toList();
    }

    private static List<Shape> shapes() {
        var names = List.of("maxima", "long", "breve", "whole", "half", "quarter", "eighth", "16th", "32nd", "64th");
        var shapes = new ArrayList<Shape>();
        var length = Fraction.of(8);
        for (var name : names) {
            shapes.add(new Shape(name, 1, length.times(Fraction.of(3, 2))));
            shapes.add(new Shape(name, 0, length));
            length = length.dividedBy(2);
        }
        return List.copyOf(shapes);
    }

    private boolean fellBefore(int index) {
        return bars.get(index - 1).bar().changes().slowingTo().isPresent();
    }

    /** The format has no tempo that falls evenly: it falls at once where it has arrived. */
    private Node arrived(int index) {
        return sound(bars.get(index).inForce().tempo());
    }

    private void slowing(int index, Bar bar, int to) {
        var words = Node.text("words", "slowing to " + to).with("font-style", "italic");
        moments.add(index, bar.from(), DirectionElement.above(words, DashedLine.SLOWING.start()));
        moments.add(index, bar.to(), DirectionElement.above(DashedLine.SLOWING.stop()));
    }

    private static DirectionElement feel(Feel feel) {
        return DirectionElement.above(Node.text("words", inWords(feel)))
                .sounding(Node.of("sound", Node.of("swing", swing(feel.swing()))));
    }

    private static List<Node> swing(Optional<Swing> swing) {
        return swing.map(each -> List.of(
                        Node.text("first", each.first()),
                        Node.text("second", each.second()),
                        Node.text("swing-type", each.unit().equals(Swing.EIGHTHS) ? "eighth" : "16th")))
                .orElseGet(() -> List.of(Node.empty("straight")));
    }

    private static String inWords(Feel feel) {
        String pairs = feel.swing()
                .map(swing -> (swing.unit().equals(Swing.EIGHTHS) ? "Swing eighths " : "Swing sixteenths ")
                        + swing.first() + ":" + swing.second())
                .orElse("");
        String pulse = feel.halfTime() ? "Half-time feel" : "";
        String both = Stream.of(pairs, pulse).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
        return both.isEmpty() ? "Straight" : both;
    }
}
