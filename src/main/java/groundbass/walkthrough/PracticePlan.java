package groundbass.walkthrough;

import groundbass.score.Line;
import groundbass.score.Tempo;
import groundbass.walkthrough.HardSpots.Spot;
import groundbass.walkthrough.words.FormWords;
import groundbass.walkthrough.words.FormWords.Section;
import groundbass.walkthrough.words.Wording;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** How one begins with a line: how slowly, what to loop, and in which order its parts come together. */
final class PracticePlan {
    /** A tempo at which the fastest beat is four strokes a second leaves time to think (common practice, no source). */
    private static final double THINKING = 4;

    /** A beat is worth a loop from so many strokes a second on (common practice, no source). */
    private static final double QUICK = 5;

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

    String text() {
        return Stream.of(Optional.of(begin()), Optional.of(words.say("practice.care")), hardest(), order())
                .flatMap(Optional::stream)
                .reduce((one, two) -> one + " " + two)
                .orElseThrow();
    }

    /** Whether half its bars at least are not those of an earlier one. */
    private boolean isNew(Section section) {
        long told = IntStream.rangeClosed(section.firstBar(), section.lastBar())
                .filter(bar -> earlier.of(bar - line.firstNumber()).isPresent())
                .count();
        return 2 * told <= section.bars();
    }

    private String begin() {
        var tempo = line.header().tempo();
        int percent = percent();
        int slow = Math.max(Tempo.SLOWEST, Math.round(tempo.perMinute() * percent / 100f));
        return words.say("practice.begin", String.valueOf(percent), words.tempo(new Tempo(slow, tempo.beat())));
    }

    private int percent() {
        double share = THINKING / Math.max(THINKING, hard.strokesPerSecond());
        int steps = (int) (100 * share) / STEP * STEP;
        return Math.max(SLOWEST, Math.min(FASTEST, steps));
    }

    private Optional<String> hardest() {
        var spots = hard.spots(QUICK).stream()
                .map(spot -> words.say(
                        "practice.spot."
                                + spot.why().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                        where(spot)))
                .toList();
        return Optional.of(spots)
                .filter(each -> !each.isEmpty())
                .map(each -> words.say("practice.loop", words.list(each)));
    }

    private String where(Spot spot) {
        String beat = words.say("beat", String.valueOf(spot.beat()));
        return line.bars().get(spot.bar()).isPickup()
                ? words.say("practice.pickup", beat)
                : words.say("practice.bar", String.valueOf(spot.bar() + line.firstNumber()), beat);
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
