package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.walkthrough.stretch.RhythmWords;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
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
 * The rhythm that so many bars, or beats, of a line have that a teacher names it once, and later only where one differs.
 * That of bars is notes of one value; that of beats never begins with a rest: who starts in the middle would play that on
 * the beat. Two of three that sound have it (common practice, no source).
 *
 * @param bar  in words; of bars there is none unless their notes are all of one value
 * @param evenly the same as one says it, {@code in eighths}; none where it is one note a beat
 * @param beat in words; none where bars have a rhythm
 */
record UsualRhythm(Optional<String> bar, Optional<String> evenly, Optional<String> beat) {
    static final UsualRhythm NONE = new UsualRhythm(Optional.empty(), Optional.empty(), Optional.empty());

    private static final int FEWEST = 5;
    private static final int OF_THREE = 2;

    /** Counted over all bars; a pickup is no bar. */
    static UsualRhythm of(WrittenLine written, Wording words) {
        var bar = commonest(written.bars().stream()
                .filter(each -> !each.bar().isPickup())
                .map(each -> even(each, words))
                .toList());
        return bar.isPresent()
                ? new UsualRhythm(bar, evenly(written, bar, words), Optional.empty())
                : new UsualRhythm(
                        bar,
                        Optional.empty(),
                        commonest(written.bars().stream()
                                .flatMap(each -> beats(each, words))
                                .toList()));
    }

    private static Optional<String> evenly(WrittenLine written, Optional<String> usual, Wording words) {
        return written.bars().stream()
                .filter(bar -> even(bar, words).equals(usual))
                .findFirst()
                .filter(bar ->
                        first(bar).length().compareTo(bar.inForce().meter().beatEnd(Fraction.ZERO)) != 0)
                .flatMap(bar -> words.evenly(first(bar).value()));
    }

    private static Element first(WrittenBar bar) {
        return bar.voices().get(0).elements().get(0);
    }

    /** What is said of it at the beginning. */
    Optional<String> said(Wording words) {
        return bar.map(usual -> evenly.map(even -> words.say("opening.rhythm.bar", even))
                        .orElseGet(() -> words.say("opening.rhythm.bar.beat")))
                .or(() -> beat.map(usual -> words.say("opening.rhythm", usual)));
    }

    /** Whether a bar has that of bars. */
    boolean isOf(WrittenBar written, Wording words) {
        return bar.isPresent() && bar.equals(even(written, words));
    }

    /** Whether a stretch of a bar is whole beats of one voice that all have that of beats. */
    boolean isOf(WrittenBar written, Stretch stretch, Wording words) {
        var meter = written.inForce().meter();
        return beat.isPresent()
                && meter.beatStarts().contains(stretch.from())
                && meter.beatStarts().stream()
                        .filter(stretch::contains)
                        .allMatch(start -> rhythm(written, start, meter, words).equals(beat));
    }

    /** A bar of one voice in which as many notes as it holds of one value are struck: {@code four quarters}. */
    private static Optional<String> even(WrittenBar written, Wording words) {
        var elements = written.voices().get(0).elements();
        boolean even = written.voices().size() == 1
                && elements.size() > 1
                && elements.stream().allMatch(element -> element instanceof Chord && !RhythmWords.isHeld(element))
                && elements.stream().map(Element::value).distinct().count() == 1
                && written.voices().get(0).tuplets().isEmpty();
        return even ? Optional.of(words.notes(elements.get(0).value(), elements.size())) : Optional.empty();
    }

    private static Optional<String> commonest(List<Optional<String>> all) {
        Map<String, Long> times = all.stream()
                .flatMap(Optional::stream)
                .collect(Collectors.groupingBy(Function.identity(), Collectors.counting()));
        return times.entrySet().stream()
                .max(Map.Entry.<String, Long>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
                .filter(most -> most.getValue() >= FEWEST && 3 * most.getValue() >= (long) OF_THREE * all.size())
                .map(Map.Entry::getKey);
    }

    /** For each beat that sounds its rhythm in words; empty where it says no more than one note or two voices. */
    private static Stream<Optional<String>> beats(WrittenBar bar, Wording words) {
        var meter = bar.inForce().meter();
        return meter.beatStarts().stream()
                .filter(start -> !start.isBefore(bar.bar().from())
                        && start.isBefore(bar.bar().to()))
                .filter(start -> isHeard(bar, start, meter))
                .map(start -> rhythm(bar, start, meter, words));
    }

    private static boolean isHeard(WrittenBar bar, Fraction start, Meter meter) {
        return bar.voices().stream()
                .anyMatch(voice -> Stretch.kind(voice, start, meter.beatEnd(start)) != Stretch.Kind.REST);
    }

    private static Optional<String> rhythm(WrittenBar bar, Fraction start, Meter meter, Wording words) {
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
