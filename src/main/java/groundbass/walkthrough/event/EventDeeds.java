package groundbass.walkthrough.event;

import groundbass.score.Tuning;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import java.util.List;
import java.util.function.Function;

/** What both hands do in one event, and how long it lasts. */
final class EventDeeds {
    private final Wording words;
    private final NoteWords notes;

    EventDeeds(Wording words, Tuning tuning) {
        this.words = words;
        this.notes = new NoteWords(words, tuning);
    }

    /** @param elements one, or those of both voices where they begin and end together */
    String full(List<Element> elements) {
        return told(elements, heads -> notes.of(heads, true));
    }

    /** The same with places and strokes alone. */
    String brief(List<Element> elements) {
        return told(elements, notes::brief);
    }

    private String told(List<Element> elements, Function<List<Head>, String> struck) {
        return elements.stream()
                .map(element -> told(element, struck))
                .distinct()
                .reduce((one, two) -> words.say("next", one, two))
                .orElseThrow();
    }

    private String told(Element element, Function<List<Head>, String> struck) {
        return element instanceof Chord chord ? chord(chord, struck) : rest((Rest) element);
    }

    private String rest(Rest rest) {
        return rest.wholeBar() ? words.say("rest.bar") : words.rests(rest.value(), 1);
    }

    private String chord(Chord chord, Function<List<Head>, String> struck) {
        var begun = chord.heads().stream().filter(head -> !head.tiedFrom()).toList();
        var held = chord.heads().stream().filter(Head::tiedFrom).toList();
        String deed = begun.isEmpty()
                ? words.say("event.held", names(held))
                : held.isEmpty() ? struck.apply(begun) : words.say("event.over", struck.apply(begun), names(held));
        String lasting = words.say("event.lasting", deed, words.notes(chord.value(), 1));
        return chord.heads().stream().anyMatch(Head::tiedTo) ? words.say("event.tied", lasting) : lasting;
    }

    private String names(List<Head> heads) {
        return words.list(
                heads.stream().map(head -> words.name(head.pitch().name())).toList());
    }
}
