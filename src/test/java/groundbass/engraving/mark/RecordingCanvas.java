package groundbass.engraving.mark;

import java.util.ArrayList;
import java.util.List;

/** Writes down what it is asked to draw, a primitive a line. */
public final class RecordingCanvas implements Canvas {
    private final List<String> lines = new ArrayList<>();
    private int depth;

    public List<String> lines() {
        return lines;
    }

    public String text() {
        return String.join("\n", lines) + "\n";
    }

    @Override
    public void begin(Group group) {
        say(group.role().name().toLowerCase(java.util.Locale.ROOT)
                + group.passage()
                        .map(passage -> " " + passage.from().bar() + ":"
                                + passage.from().at())
                        .orElse(""));
        depth++;
    }

    @Override
    public void end() {
        depth--;
    }

    @Override
    public void rect(Box box) {
        say("rect" + numbers(box.left(), box.top(), box.width(), box.height()));
    }

    @Override
    public void line(Shape.Stroke stroke) {
        say("line" + points(List.of(stroke.from(), stroke.to())));
    }

    @Override
    public void polygon(Shape.Polygon polygon) {
        say("polygon" + points(polygon.corners()));
    }

    @Override
    public void curve(Shape.Curve curve) {
        say("curve" + points(List.of(curve.from(), curve.first(), curve.second(), curve.to())));
    }

    @Override
    public void glyph(Shape.Sign sign) {
        say("glyph " + sign.glyph() + points(List.of(sign.at())) + (sign.scale() == 1 ? "" : " x" + sign.scale()));
    }

    @Override
    public void text(Shape.Run run) {
        say("text " + run.face() + numbers(run.size()) + points(List.of(run.at())) + " " + run.align() + " "
                + run.text());
    }

    private void say(String line) {
        lines.add("  ".repeat(depth) + line);
    }

    private static String points(List<Point> points) {
        var out = new StringBuilder();
        points.forEach(point -> out.append(numbers(point.x(), point.y())));
        return out.toString();
    }

    private static String numbers(double... numbers) {
        var out = new StringBuilder();
        for (double number : numbers) {
            Decimals.append(out.append(' '), number, 2);
        }
        return out.toString();
    }
}
