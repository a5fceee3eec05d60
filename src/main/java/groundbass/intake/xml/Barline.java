package groundbass.intake.xml;

import groundbass.score.Passes;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;

/** Repeats and brackets at the edges of measures. Mutable: remembers the bracket that is open. */
final class Barline {
    private static final Pattern FIGURE = Pattern.compile("\\d{1,2}");

    private Optional<RawBar> open = Optional.empty();
    private int lastPass;

    void read(Element barline, RawBar bar, List<RawBar> before) {
        barline.child("ending").filter(ending -> ending.is("type", "start")).ifPresent(ending -> {
            close(before);
            begin(ending, bar);
        });
        barline.child("repeat").ifPresent(repeat -> repeat(repeat, bar));
        barline.child("ending").filter(ending -> !ending.is("type", "start")).ifPresent(ending -> {
            bar.endingEnd |= open.isPresent();
            open = Optional.empty();
        });
    }

    /** A bracket that another follows, or nothing, ends before it. */
    void close(List<RawBar> before) {
        open.ifPresent(begun -> (before.isEmpty() ? begun : before.get(before.size() - 1)).endingEnd = true);
        open = Optional.empty();
    }

    private void begin(Element ending, RawBar bar) {
        var passes = FIGURE.matcher(ending.attribute("number").orElse(""))
                .results()
                .map(MatchResult::group)
                .mapToInt(Integer::parseInt)
                .toArray();
        int first = passes.length == 0 ? lastPass + 1 : passes[0];
        int last = passes.length == 0 ? first : passes[passes.length - 1];
        if (Ending.isPasses(first, last)) {
            bar.ending = Optional.of(new Ending(first, last));
            lastPass = last;
            open = Optional.of(bar);
        }
    }

    private void repeat(Element repeat, RawBar bar) {
        if (repeat.is("direction", "forward")) {
            bar.repeatStart = true;
            lastPass = 0;
        } else {
            var times = repeat.attribute("times")
                    .flatMap(Numbers::whole)
                    .map(OptionalInt::of)
                    .orElse(OptionalInt.empty());
            boolean said = times.isPresent() && times.getAsInt() >= 2 && times.getAsInt() <= Passes.MOST_PASSES;
            boolean counts = said && open.isEmpty() && !bar.endingEnd;
            bar.repeatEnd = Optional.of(counts ? new RepeatEnd(Optional.of(times.getAsInt())) : RepeatEnd.PLAIN);
            bar.endingEnd |= open.isPresent();
            open = Optional.empty();
        }
    }
}
