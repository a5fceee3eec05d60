package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Rest;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The rhythm that so many beats of a line have that a teacher names it once, and later only where a beat differs. It is
 * the usual one where two beats of three that sound have it, and never one that begins with a rest: who starts in the
 * middle would play that on the beat (common practice, no source).
 */
final class UsualRhythm {
    private static final int FEWEST = 5;
    private static final int OF_THREE = 2;

    private final Wording words;

    private UsualRhythm(Wording words) {
        this.words = words;
    }

    /** Its words, counted over all bars; empty where no rhythm stands out. */
    static Optional<String> of(WrittenLine written, Wording words) {
        return new UsualRhythm(words).commonest(written.bars());
    }

    private Optional<String> commonest(List<WrittenBar> bars) {
        var beats = bars.stream().flatMap(this::beats).toList();
        Map<String, Long> times = beats.stream()
                .flatMap(Optional::stream)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return times.entrySet().stream()
                .max(Map.Entry.<String, Long>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .filter(most -> most.getValue() >= FEWEST && 3 * most.getValue() >= (long) OF_THREE * beats.size())
                .map(Map.Entry::getKey);
    }

    /** For each beat that sounds its rhythm in words; empty where it says no more than one note or two voices. */
    private Stream<Optional<String>> beats(WrittenBar bar) {
        var meter = bar.inForce().meter();
        return meter.beatStarts().stream()
                .filter(start -> !start.isBefore(bar.bar().from())
                        && start.isBefore(bar.bar().to()))
                .filter(start -> isHeard(bar, start, meter))
                .map(start -> rhythm(bar, start, meter));
    }

    private static boolean isHeard(WrittenBar bar, Fraction start, Meter meter) {
        return bar.voices().stream()
                .anyMatch(voice -> Stretch.kind(voice, start, meter.beatEnd(start)) != Stretch.Kind.REST);
    }

    private Optional<String> rhythm(WrittenBar bar, Fraction start, Meter meter) {
        if (bar.voices().size() > 1) {
            return Optional.empty();
        }
        var voice = bar.voices().get(0);
        var elements = new Stretch(start, meter.beatEnd(start), Stretch.Kind.PLAY).elements(voice);
        var first = elements.get(0);
        boolean begins = first.onset().equals(start) && !(first instanceof Rest) && !RhythmWords.isHeld(first);
        if (elements.size() < 2 || !begins || !endsBy(elements, meter.beatEnd(start))) {
            return Optional.empty();
        }
        int index = voice.elements().indexOf(first);
        return Optional.of(new RhythmWords(words, voice).of(index, index + elements.size()));
    }

    /** A tuplet over two beats is no beat's. */
    private static boolean endsBy(List<Element> elements, Fraction end) {
        var last = elements.get(elements.size() - 1);
        return !last.onset().plus(last.length()).isAfter(end);
    }
}
