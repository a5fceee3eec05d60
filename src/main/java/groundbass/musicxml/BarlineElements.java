package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What stands at the edges of bars, where that is more than a single line (rule: ending-brackets, jump-signs). */
final class BarlineElements {
    private final List<Bar> bars;

    BarlineElements(List<Bar> bars) {
        this.bars = bars;
    }

    Optional<Node> left(int index) {
        var signs = bars.get(index).repeats();
        var children = new ArrayList<Node>();
        if (signs.start()) {
            children.add(Node.text("bar-style", "heavy-light"));
        }
        signs.ending().ifPresent(ending -> children.add(ending(ending, "start", ending + ".")));
        if (signs.start()) {
            children.add(Node.empty("repeat").with("direction", "forward"));
        }
        return barline("left", children);
    }

    Optional<Node> right(int index) {
        var signs = bars.get(index).repeats();
        var children = new ArrayList<Node>();
        style(index).ifPresent(style -> children.add(Node.text("bar-style", style)));
        if (signs.endingEnd()) {
            String type = signs.end().isPresent() ? "stop" : "discontinue";
            openEnding(index).ifPresent(ending -> children.add(ending(ending, type, "")));
        }
        signs.end().ifPresent(end -> children.add(repeat(end, signs.endingEnd())));
        return barline("right", children);
    }

    private static Optional<Node> barline(String location, List<Node> children) {
        return children.isEmpty()
                ? Optional.empty()
                : Optional.of(Node.of("barline", children).with("location", location));
    }

    private static Node ending(Ending ending, String type, String text) {
        String passes = IntStream.rangeClosed(ending.firstPass(), ending.lastPass())
                .mapToObj(String::valueOf)
                .collect(Collectors.joining(", "));
        return Node.text("ending", text).with("number", passes).with("type", type);
    }

    private Optional<Ending> openEnding(int index) {
        for (int i = index; i >= 0; i--) {
            var ending = bars.get(i).repeats().ending();
            if (ending.isPresent()) {
                return ending;
            }
        }
        return Optional.empty();
    }

    /** How often, and whether after a jump, is said where there are no endings, as the format has it. */
    private Node repeat(RepeatEnd end, boolean inEnding) {
        var repeat = Node.empty("repeat").with("direction", "backward");
        if (inEnding) {
            return repeat;
        }
        var times = end.times().map(each -> repeat.with("times", each)).orElse(repeat);
        return hasJump() ? times.with("after-jump", "no") : times;
    }

    private boolean hasJump() {
        return bars.stream().anyMatch(bar -> bar.repeats().roadmap().jump().isPresent());
    }

    private Optional<String> style(int index) {
        var signs = bars.get(index).repeats();
        if (signs.end().isPresent() || index + 1 == bars.size()) {
            return Optional.of("light-heavy");
        }
        var next = bars.get(index + 1).changes();
        boolean cut = next.section().isPresent()
                || next.key().isPresent()
                || signs.roadmap().fine()
                || signs.roadmap().jump().isPresent();
        return cut ? Optional.of("light-light") : Optional.empty();
    }
}
