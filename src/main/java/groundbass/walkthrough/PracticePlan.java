package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Tempo;
import groundbass.walkthrough.Pace.Bars;
import groundbass.walkthrough.words.FormWords;
import groundbass.walkthrough.words.FormWords.Section;
import groundbass.walkthrough.words.Metronome;
import groundbass.walkthrough.words.Wording;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** How one practises a line: how slowly one begins, what takes most time, and in which order its parts come together. */
final class PracticePlan {
    /** A tempo at which the fastest beat is four strokes a second leaves time to think (common practice, no source). */
    private static final double THINKING = 4;

    /** The slowest and the fastest share of the tempo that is proposed to begin with, in percent, and its steps. */
    private static final int SLOWEST = 40;

    private static final int FASTEST = 80;
    private static final int STEP = 10;

    /** Lines of more bars come together in parts of as many (common practice, no source). */
    private static final int PART = 4;

    private static final int LONG = 2 * PART;

    private final Wording words;
    private final Line line;
    private final HardSpots hard;
    private final EarlierBars earlier;

    PracticePlan(Wording words, Line line, HardSpots hard, EarlierBars earlier) {
        this.words = words;
        this.line = line;
        this.hard = hard;
        this.earlier = earlier;
    }

    /** What is said when the line has been played through. */
    String text() {
        return Stream.of(order(), quickest(), Optional.of(words.say("practice.care")))
                .flatMap(Optional::stream)
                .reduce((one, two) -> one + " " + two)
                .orElseThrow();
    }

    /** The tempo to begin with. */
    String begin() {
        var tempo = line.header().tempo();
        var meter = line.header().meter();
        int slow = Math.max(Tempo.SLOWEST, Math.round(tempo.perMinute() * percent() / 100f));
        var metronome = Metronome.of(slow, tempo, meter);
        String begin = String.valueOf(metronome.perMinute());
        if (metronome.onCounts()) {
            String whole = String.valueOf(Metronome.clicks(tempo.perMinute(), tempo, meter));
            return words.say("practice.begin.counts", begin, whole);
        }
        var counts = tempo.beat().dividedBy(meter.count());
        if (counts.equals(Fraction.ONE)) {
            return words.say("practice.begin", begin);
        }
        return counts.isOnGrid(Fraction.ONE)
                ? words.say("practice.begin.every", begin, words.number((int) counts.toDouble()))
                : words.say("practice.begin.beats", begin);
    }

    /** Whether half its bars at least are not those of an earlier one. */
    private boolean isNew(Section section) {
        long told = IntStream.rangeClosed(section.firstBar(), section.lastBar())
                .filter(bar -> earlier.of(bar - line.firstNumber()).isPresent())
                .count();
        return 2 * told <= section.bars();
    }

    private int percent() {
        double share = THINKING / Math.max(THINKING, hard.strokesPerSecond());
        int steps = (int) (100 * share) / STEP * STEP;
        return Math.max(SLOWEST, Math.min(FASTEST, steps));
    }

    private Optional<String> quickest() {
        return hard.quickest().map(bars -> words.say("practice.quick", where(bars)));
    }

    private String where(Bars bars) {
        int first = bars.first() + line.firstNumber();
        int last = bars.last() + line.firstNumber();
        if (last == 0) {
            return words.say("practice.pickup");
        }
        return first == last
                ? words.say("moved.bar", String.valueOf(first))
                : words.say(
                        last == first + 1 ? "moved.bars.two" : "moved.bars",
                        String.valueOf(first),
                        String.valueOf(last));
    }

    private Optional<String> order() {
        var sections = FormWords.sections(line).stream().filter(this::isNew).toList();
        if (sections.size() > 1) {
            return sections.stream()
                    .map(section -> section.bars() > LONG
                            ? words.say("practice.section.long", section.name())
                            : words.say("practice.section", section.name()))
                    .distinct()
                    .reduce((one, two) -> words.say("practice.then", one, two))
                    .map(each -> words.say("practice.sections", each));
        }
        boolean many = line.bars().size() > PART + (line.bars().get(0).isPickup() ? 1 : 0);
        return many ? Optional.of(words.say("practice.parts")) : Optional.empty();
    }
}
