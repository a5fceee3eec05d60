package groundbass.walkthrough.stretch;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * What a voice strikes in a stretch, as one counts it: notes that follow one another as a group, the count on which each
 * group comes in, and rests by the count on which they are felt. A note lasts until the next, or until a rest is said.
 */
final class Groups {
    private final Wording words;
    private final Voice voice;
    private final Meter meter;
    private final List<Item> items = new ArrayList<>();

    /** Elements in a row that are all notes, or all rests; {@code end} not included. */
    private record Item(int first, int end, boolean rests) {
        int size() {
            return end - first;
        }
    }

    /** @param first, end indexes of elements, {@code end} not included */
    Groups(Wording words, Voice voice, Meter meter, int first, int end) {
        this.words = words;
        this.voice = voice;
        this.meter = meter;
        int start = first;
        for (int i = first + 1; i <= end; i++) {
            if (i == end || isRest(i) != isRest(start)) {
                items.add(new Item(start, i, isRest(start)));
                start = i;
            }
        }
    }

    /** Whether counting tells when everything is played: each group even, each rest and what follows it on a count. */
    boolean isCounted() {
        return items.stream().allMatch(item -> item.rests() || isEven(item))
                && IntStream.range(0, items.size())
                        .filter(i -> i > 0 || items.get(i).rests())
                        .allMatch(i -> count(items.get(i)).isPresent());
    }

    /** Whether it is one group, with or without a rest after it. */
    boolean isOne() {
        return !items.isEmpty()
                && !items.get(0).rests()
                && items.stream().filter(item -> !item.rests()).count() == 1;
    }

    /** The index after the notes of what is one group. */
    int endOfNotes() {
        return items.get(0).end();
    }

    /** Whether its notes all have one value. */
    boolean isEven() {
        return isEven(items.get(0));
    }

    private boolean isEven(Item item) {
        var elements = voice.elements().subList(item.first(), item.end());
        return elements.stream().map(Element::value).distinct().count() == 1
                && elements.stream().noneMatch(RhythmWords::isHeld);
    }

    /** Whether it is notes without a rest up to a moment, each as long as the beat that it begins on. */
    boolean isNoteABeat(Fraction to) {
        var notes = voice.elements().subList(items.get(0).first(), items.get(0).end());
        return items.size() == 1
                && notes.stream()
                        .allMatch(note -> Stretch.isBeat(
                                        note.onset(), note.onset().plus(note.length()), meter)
                                || notes.size() == 1
                                        && note.onset().plus(note.length()).equals(to));
    }

    /**
     * All of it, each group with its count.
     *
     * @param after whether something was told before, after which the first group comes in
     */
    String said(PhraseWords phrases, boolean after) {
        String all = "";
        for (int i = 0; i < items.size(); i++) {
            var part = part(i, phrases, after);
            boolean enters = i == 1 && items.get(0).rests();
            all = part.isEmpty() ? all : all.isEmpty() ? part : words.say(enters ? "rest.entry" : "next", all, part);
        }
        return all;
    }

    /** A rest between notes is told with what comes after it. */
    private String part(int index, PhraseWords phrases, boolean after) {
        var item = items.get(index);
        boolean first = index == 0;
        boolean last = index == items.size() - 1;
        if (item.rests()) {
            return first ? words.say("rest.at", at(item)) : last ? words.say("rest.then") : "";
        }
        String played = phrases.of(strokes(item));
        if (first && !after) {
            return played;
        }
        String entry = words.say(item.size() == 1 ? "entry.on" : "entry.from", at(item), played);
        return index > 1 ? words.say("entry.rest", entry) : entry;
    }

    /** What is struck, without counts and rests. */
    String struck(PhraseWords phrases) {
        return phrases.of(items.stream()
                .filter(item -> !item.rests())
                .flatMap(item -> strokes(item).stream())
                .toList());
    }

    /** The same with a rest that ends it. */
    String plain(PhraseWords phrases) {
        String played = struck(phrases);
        boolean rest = items.get(items.size() - 1).rests();
        return rest ? words.say("next", played, words.say("rest.then")) : played;
    }

    boolean isStruck() {
        return items.stream().filter(item -> !item.rests()).anyMatch(item -> !strokes(item)
                .isEmpty());
    }

    private List<List<Head>> strokes(Item item) {
        return voice.elements().subList(item.first(), item.end()).stream()
                .map(Chord.class::cast)
                .map(chord ->
                        chord.heads().stream().filter(head -> !head.tiedFrom()).toList())
                .filter(heads -> !heads.isEmpty())
                .toList();
    }

    private String at(Item item) {
        return count(item).orElseThrow();
    }

    private Optional<String> count(Item item) {
        return words.count(voice.elements().get(item.first()).onset(), meter);
    }

    private boolean isRest(int index) {
        return voice.elements().get(index) instanceof Rest;
    }
}
