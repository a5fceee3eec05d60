package groundbass.walkthrough;

import groundbass.score.Meter;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.NoteValue;
import groundbass.writing.TupletGroup;
import groundbass.writing.Voice;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** The values of elements that follow one another, equal neighbours counted: {@code two sixteenths and an eighth}. */
final class RhythmWords {
    private final Wording words;
    private final Voice voice;

    RhythmWords(Wording words, Voice voice) {
        this.words = words;
        this.voice = voice;
    }

    /** What one element looks like in words. */
    private record Look(Kind kind, NoteValue value) {
        enum Kind {
            NOTE,
            HELD,
            REST
        }
    }

    /** @param first, end indexes of elements, {@code end} not included; tuplets lie whole inside or outside */
    String of(int first, int end) {
        var items = new ArrayList<String>();
        int i = first;
        while (i < end) {
            var tuplet = tupletFrom(i);
            int stop = tuplet.map(group -> group.last() + 1).orElse(untilTuplet(i, end));
            var plain = runs(voice.elements().subList(i, stop));
            items.addAll(tuplet.map(group -> List.of(tuplet(group, plain))).orElse(plain));
            i = stop;
        }
        return words.list(items);
    }

    /** The same as it is said before the notes: a rest that they begin with is named with them. */
    String spoken(int first, int end) {
        int sounding = sounding(first, end);
        return sounding > first && sounding < end
                ? words.say("rhythm.after", of(first, sounding), of(sounding, end))
                : of(first, end);
    }

    /** The same with the count on which one comes in after a rest, where players have a word for it. */
    List<String> spoken(int first, int end, Meter meter) {
        int sounding = sounding(first, end);
        if (sounding == first || sounding == end || !isEven(sounding, end)) {
            return List.of(spoken(first, end));
        }
        return words.count(voice.elements().get(sounding).onset(), meter)
                .map(count -> List.of(words.say("rhythm.in", count), of(sounding, lastNote(end))))
                .orElse(List.of(spoken(first, end)));
    }

    /** The first element after the rests that stand first, those in tuplets not counted. */
    private int sounding(int first, int end) {
        int index = first;
        while (index < end
                && voice.elements().get(index) instanceof Rest
                && tupletAround(index).isEmpty()) {
            index++;
        }
        return index;
    }

    /** Before the rests that stand last, which go without saying where the notes are told with their values. */
    private int lastNote(int end) {
        int index = end;
        while (voice.elements().get(index - 1) instanceof Rest) {
            index--;
        }
        return index;
    }

    /** Whether notes of one value follow one another without a rest in between. */
    private boolean isEven(int first, int end) {
        var elements = voice.elements().subList(first, end);
        boolean broken = IntStream.range(1, elements.size())
                .anyMatch(i -> elements.get(i - 1) instanceof Rest && elements.get(i) instanceof Chord);
        return !broken
                && elements.stream()
                                .filter(Chord.class::isInstance)
                                .map(Element::value)
                                .distinct()
                                .count()
                        == 1;
    }

    private Optional<TupletGroup> tupletAround(int index) {
        return voice.tuplets().stream()
                .filter(group -> group.first() <= index && index <= group.last())
                .findFirst();
    }

    private Optional<TupletGroup> tupletFrom(int index) {
        return voice.tuplets().stream().filter(group -> group.first() == index).findFirst();
    }

    private int untilTuplet(int index, int end) {
        return voice.tuplets().stream()
                .map(TupletGroup::first)
                .filter(first -> first > index && first < end)
                .findFirst()
                .orElse(end);
    }

    private String tuplet(TupletGroup group, List<String> values) {
        String inside = words.list(values);
        return group.actual() == 3 && group.normal() == 2
                ? words.say("triplet", inside)
                : words.say("tuplet", words.number(group.actual()), words.number(group.normal()), inside);
    }

    private List<String> runs(List<Element> elements) {
        var looks = elements.stream().map(RhythmWords::look).toList();
        var runs = new ArrayList<String>();
        int start = 0;
        for (int i = 1; i <= looks.size(); i++) {
            if (i == looks.size() || !looks.get(i).equals(looks.get(start))) {
                runs.add(run(looks.get(start), i - start));
                start = i;
            }
        }
        return runs;
    }

    private String run(Look look, int count) {
        return switch (look.kind()) {
            case NOTE -> words.notes(look.value(), count);
            case HELD -> words.say("held", words.notes(look.value(), count));
            case REST -> words.rests(look.value(), count);
        };
    }

    private static Look look(Element element) {
        if (element instanceof Rest) {
            return new Look(Look.Kind.REST, element.value());
        }
        return new Look(isHeld(element) ? Look.Kind.HELD : Look.Kind.NOTE, element.value());
    }

    /** Whether nothing is struck here: the element only carries on what sounds. */
    static boolean isHeld(Element element) {
        return element instanceof Chord chord && chord.heads().stream().allMatch(Head::tiedFrom);
    }
}
