package groundbass.walkthrough;

import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The rhythm that so many beats of a line have that a teacher names it once, and later only where a beat differs (common
 * practice, no source).
 */
final class UsualRhythm {
    private static final int FEWEST = 5;
    /** Of all beats in which something begins, in percent. */
    private static final int SHARE = 40;

    private final Wording words;

    private UsualRhythm(Wording words) {
        this.words = words;
    }

    /** Its words, counted over the bars that are told by themselves; empty where no rhythm stands out. */
    static Optional<String> of(WrittenLine written, EarlierBars earlier, Wording words) {
        return new UsualRhythm(words)
                .commonest(IntStream.range(0, written.bars().size())
                        .filter(i -> earlier.of(i).isEmpty())
                        .mapToObj(written.bars()::get)
                        .toList());
    }

    private Optional<String> commonest(List<WrittenBar> bars) {
        var beats = bars.stream().flatMap(this::beats).toList();
        Map<String, Long> times = beats.stream()
                .flatMap(Optional::stream)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return times.entrySet().stream()
                .max(Map.Entry.<String, Long>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .filter(most -> most.getValue() >= FEWEST && most.getValue() * 100 >= (long) SHARE * beats.size())
                .map(Map.Entry::getKey);
    }

    /** For each beat in which something begins its rhythm in words; empty where it says no more than one note or two voices. */
    private Stream<Optional<String>> beats(WrittenBar bar) {
        return Stretch.of(bar).stream()
                .filter(stretch -> stretch.kind() == Stretch.Kind.PLAY)
                .map(stretch -> rhythm(bar, stretch));
    }

    private Optional<String> rhythm(WrittenBar bar, Stretch stretch) {
        if (bar.voices().size() > 1 || !stretch.isBeat(bar.inForce().meter())) {
            return Optional.empty();
        }
        var voice = bar.voices().get(0);
        var elements = stretch.elements(voice);
        int first = voice.elements().indexOf(elements.get(0));
        return elements.size() < 2 || RhythmWords.isHeld(elements.get(0)) || !startsAt(elements, stretch)
                ? Optional.empty()
                : Optional.of(new RhythmWords(words, voice).of(first, first + elements.size()));
    }

    private static boolean startsAt(List<Element> elements, Stretch stretch) {
        return elements.get(0).onset().equals(stretch.from());
    }
}
