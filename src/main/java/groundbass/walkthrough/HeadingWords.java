package groundbass.walkthrough;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.words.Standing;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Where a step is, and what stands above and below the staff there: chords, words, loudness. */
final class HeadingWords {
    private final Wording words;
    private final Firsts firsts;
    private final HandPositions hand;
    private final int index;
    private final WrittenBar written;
    private final Meter meter;
    private final Standing standing;

    HeadingWords(Telling telling, int index, WrittenBar written) {
        this.words = telling.words();
        this.firsts = telling.firsts();
        this.hand = telling.hand();
        this.index = index;
        this.written = written;
        this.meter = written.inForce().meter();
        this.standing = new Standing(
                words,
                written,
                chord -> Optional.of(chord.chord()),
                telling.loudness().before(index));
    }

    /** {@code Bar 3}. */
    String bar() {
        return written.bar().isPickup()
                ? words.say("pickup")
                : words.say("bar", String.valueOf(written.inForce().number()));
    }

    /** The bar and what stands anywhere in it, in one breath. */
    String wholeBar() {
        return wholeBarParts().stream()
                .reduce((one, two) -> words.say("heading", one, two))
                .orElseThrow();
    }

    /** The same, each by itself. */
    List<String> wholeBarParts() {
        var parts = new ArrayList<String>();
        parts.add(bar());
        parts.addAll(standing.between(written.bar().from(), written.bar().to()));
        return parts;
    }

    /** {@code Count 1 2 3 and come in on 4.} */
    String countIn(Count first) {
        int last = first.quarter() == 0 ? first.number() - 1 : first.number();
        var counts = IntStream.rangeClosed(1, last).mapToObj(String::valueOf).toList();
        return words.say("pickup.count", String.join(" ", counts), first.toString());
    }

    /** Which beats a stretch is, with the count where it begins later than its first one. */
    List<String> beatsOf(Stretch stretch) {
        var parts = new ArrayList<String>();
        parts.add(beats(stretch));
        if (!stretch.from().equals(meter.beatStart(stretch.from()))) {
            words.count(stretch.from(), meter).ifPresent(count -> parts.add(words.say("start", count)));
        }
        return parts;
    }

    /** What stands above and below the staff where a stretch begins, and its chords. */
    List<String> standing(Stretch stretch) {
        return standing.atStart(stretch.from(), stretch.to(), first(stretch));
    }

    /** What stands there later, in sentences. */
    List<String> standingLater(Stretch stretch) {
        return standing.later(stretch.from(), stretch.to(), first(stretch));
    }

    /** Whether more than one thing stands where a stretch begins. */
    boolean isMuch(Stretch stretch) {
        return standing.isMuch(stretch.from(), stretch.to(), first(stretch));
    }

    private Fraction first(Stretch stretch) {
        return written.bar().notes().stream()
                .map(Note::onset)
                .filter(stretch::contains)
                .min(Comparator.naturalOrder())
                .orElse(stretch.from());
    }

    /** Whether a chord, loudness or words stand at a stretch, or the hand moves for it. */
    boolean isMarked(Stretch stretch) {
        return standing.isMarked(stretch.from(), stretch.to()) || hand.isMoved(index, stretch.from(), stretch.to());
    }

    /** {@code beats 3 and 4}, with their counts where a beat has several. */
    String beats(Stretch stretch) {
        var beats = BeatsTouched.between(meter, stretch.from(), stretch.to());
        int first = beats.get(0);
        int last = beats.get(beats.size() - 1);
        String text = beatNumbers(first, last);
        boolean plain = meter.beats().stream().allMatch(counts -> counts == 1);
        return plain ? text : counts(text, first, last);
    }

    /** Which counts a beat has is said where its meter begins, then they are said alone. */
    private String counts(String beats, int firstBeat, int lastBeat) {
        String counts = counts(BeatsTouched.firstCount(meter, firstBeat), BeatsTouched.lastCount(meter, lastBeat));
        return isNewMeter() ? words.say("counts.of", beats, counts) : counts;
    }

    private String counts(int first, int last) {
        if (first == last) {
            return words.say("counts.one", String.valueOf(first));
        }
        return words.say(last == first + 1 ? "counts.two" : "counts.more", String.valueOf(first), String.valueOf(last));
    }

    private boolean isNewMeter() {
        return index == 0 || written.bar().changes().meter().isPresent() || firsts.isFirstFullBar(index);
    }

    private String beatNumbers(int first, int last) {
        if (first == last) {
            return words.say("beat", String.valueOf(first));
        }
        return words.say(last == first + 1 ? "beats.two" : "beats.more", String.valueOf(first), String.valueOf(last));
    }
}
