package groundbass.walkthrough.event;

import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import java.util.List;
import java.util.Optional;

/** Where in its bar an event begins, as players count; inside a tuplet, which of its shares it is. */
final class EventPlaces {
    /** Where nobody has a word for a moment, the last of these before it has one. */
    private static final List<Fraction> GRIDS = List.of(Fraction.of(1, 16), Fraction.of(1, 8), Fraction.of(1, 4));

    private final Wording words;
    private final Meter meter;

    EventPlaces(Wording words, Meter meter) {
        this.words = words;
        this.meter = meter;
    }

    /** {@code 2 e}: a number and its syllable apart, so that neither is read as part of the other. */
    static String apart(Count count) {
        String said = count.toString();
        String number = String.valueOf(count.number());
        return said.equals(number) ? number : number + " " + said.substring(number.length());
    }

    /** Of the element of this index. */
    String of(Voice voice, int index) {
        var at = voice.elements().get(index).onset();
        return voice.tuplets().stream()
                .filter(group -> group.first() <= index && index <= group.last())
                .findFirst()
                .flatMap(group -> inTuplet(voice, group, at))
                .or(() -> count(at))
                .orElseGet(() -> after(at));
    }

    private Optional<String> count(Fraction at) {
        return Count.at(at, meter).map(EventPlaces::apart);
    }

    private Optional<String> inTuplet(Voice voice, TupletGroup group, Fraction at) {
        var last = voice.elements().get(group.last());
        var start = voice.elements().get(group.first()).onset();
        var share = last.onset().plus(last.length()).minus(start).dividedBy(group.actual());
        var before = at.minus(start).dividedBy(share);
        boolean whole = before.equals(Fraction.of(before.floor(), 1));
        String which = whole
                ? String.valueOf(before.floor() + 1)
                : words.say("event.after", String.valueOf(before.floor() + 1));
        String shares = String.valueOf(group.actual());
        return count(start)
                .map(count -> group.actual() == 3 && group.normal() == 2
                        ? words.say("event.triplet", count, which, shares)
                        : words.say("event.tuplet", count, which, shares, String.valueOf(group.normal())));
    }

    private String after(Fraction at) {
        return GRIDS.stream()
                .map(grid -> grid.times(Fraction.of(at.dividedBy(grid).floor(), 1)))
                .flatMap(before -> count(before).stream())
                .findFirst()
                .map(count -> words.say("event.after", count))
                .orElseGet(() -> words.say(
                        "event.after",
                        String.valueOf(at.dividedBy(meter.count()).floor() + 1)));
    }
}
