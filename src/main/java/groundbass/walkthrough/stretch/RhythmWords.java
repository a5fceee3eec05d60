package groundbass.walkthrough.stretch;

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

/** The values of elements that follow one another, equal neighbours counted: {@code two sixteenths and an eighth}. */
public final class RhythmWords {
    private final Wording words;
    private final Voice voice;

    public RhythmWords(Wording words, Voice voice) {
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
    public String of(int first, int end) {
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
    public static boolean isHeld(Element element) {
        return element instanceof Chord chord && chord.heads().stream().allMatch(Head::tiedFrom);
    }
}
