package groundbass.walkthrough.words;

import groundbass.score.Bar;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** What a line consists of, and how it is counted aloud. */
public final class FormWords {
    /** A section that begins with the pickup is told from here. */
    private static final int FIRST_BAR = 1;

    private static final int COUNTED_OF = 3;

    private final Wording words;
    private final Line line;

    /** A named part of the line. The last bar belongs to it. */
    public record Section(String name, int firstBar, int lastBar) {
        /** How many it has. */
        public int bars() {
            return lastBar - firstBar + 1;
        }
    }

    public FormWords(Wording words, Line line) {
        this.words = words;
        this.line = line;
    }

    /** The sections in the order in which they are written. */
    public static List<Section> sections(Line line) {
        var starts = IntStream.range(0, line.bars().size())
                .filter(i -> line.bars().get(i).changes().section().isPresent())
                .boxed()
                .toList();
        var sections = new ArrayList<Section>();
        for (int i = 0; i < starts.size(); i++) {
            int start = starts.get(i);
            int end = i + 1 < starts.size() ? starts.get(i + 1) : line.bars().size();
            String name = line.bars().get(start).changes().section().orElseThrow();
            int last = end - 1 + line.firstNumber();
            sections.add(new Section(name, Math.min(last, Math.max(FIRST_BAR, start + line.firstNumber())), last));
        }
        return sections;
    }

    /** {@code 8 bars: “Haul” (bars 1 to 4) and “Climb” (bars 5 to 8).} A pickup is no bar. */
    public String form() {
        int bars = (int) line.bars().stream().filter(bar -> !bar.isPickup()).count();
        String counted = words.counted("form.bars", bars);
        var all = sections(line);
        if (all.size() == 1 && all.get(0).bars() == bars) {
            return words.say("form.one", counted, all.get(0).name());
        }
        var sections = all.stream().map(this::section).toList();
        return sections.isEmpty()
                ? words.say("form.plain", counted)
                : words.say("form.sections", counted, words.list(sections));
    }

    private String section(Section section) {
        String first = String.valueOf(section.firstBar());
        int more = section.lastBar() - section.firstBar();
        String key = more == 0 ? "form.section.bar" : more == 1 ? "form.section.two" : "form.section";
        return words.say(key, section.name(), first, String.valueOf(section.lastBar()));
    }

    /** {@code Count aloud: 1 & 2 & 3 & 4 &.} As finely as notes begin in one bar of three (common practice, no source); beats of several counts apart. */
    public String count() {
        var meter = line.header().meter();
        int parts = finest(meter);
        var numbers = new ArrayList<String>();
        int next = 1;
        for (int counts : meter.beats()) {
            numbers.add(IntStream.range(next, next + counts)
                    .mapToObj(number -> aloud(number, parts))
                    .collect(Collectors.joining(" ")));
            next += counts;
        }
        return words.say("form.count", String.join(meter.isGrouped() || meter.isCompound() ? " · " : " ", numbers));
    }

    private static String aloud(int number, int parts) {
        return IntStream.range(0, parts)
                .mapToObj(part -> new Count(number, part * 4 / parts))
                .map(count -> count.quarter() == 0 ? count.toString() : count.syllable())
                .collect(Collectors.joining(" "));
    }

    /** Into how many parts one of three bars in a meter, at least, divides its counts: 1, 2 or 4. */
    private int finest(Meter meter) {
        var inForce = line.inForce();
        var parts = IntStream.range(0, line.bars().size())
                .filter(i -> inForce.get(i).meter().equals(meter))
                .map(i -> parts(line.bars().get(i), meter))
                .sorted()
                .toArray();
        return parts.length == 0 ? 1 : parts[parts.length - 1 - (parts.length - 1) / COUNTED_OF];
    }

    private static int parts(Bar bar, Meter meter) {
        return bar.notes().stream()
                .map(note -> Count.at(note.onset(), meter))
                .flatMap(Optional::stream)
                .mapToInt(count -> count.quarter() == 0 ? 1 : count.quarter() == 2 ? 2 : 4)
                .max()
                .orElse(1);
    }
}
