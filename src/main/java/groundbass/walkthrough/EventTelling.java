package groundbass.walkthrough;

import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.writing.Element;
import groundbass.writing.Head;
import groundbass.writing.Writing;
import groundbass.writing.WrittenBar;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Each written note, chord and rest told by itself, for somebody who goes from one to the next. */
public final class EventTelling {
    private final Vocabulary words;
    private final Messages messages;
    private final NoteWords notes;
    private final Map<Integer, WrittenBar> bars = new HashMap<>();
    private final Map<Passage, String> told = new HashMap<>();

    private EventTelling(Line line, Messages messages, Naming naming) {
        this.messages = messages;
        this.words = new Vocabulary(messages, naming);
        this.notes = new NoteWords(words, line.header().tuning());
        for (var bar : Writing.of(line).bars()) {
            bars.put(bar.inForce().number(), bar);
            bar.voices().stream()
                    .flatMap(voice -> voice.elements().stream())
                    .forEach(element -> told.merge(passage(bar, element), what(element), this::both));
        }
    }

    public static EventTelling of(Line line, Messages messages, Naming naming) {
        return new EventTelling(line, messages, naming);
    }

    /** Where an event begins, its number and syllable apart: {@code 2 e}. */
    public Optional<String> count(Passage event) {
        return Optional.ofNullable(bars.get(event.from().bar()))
                .flatMap(bar -> Count.at(event.from().at(), bar.inForce().meter()))
                .map(EventTelling::apart);
    }

    /** Bar, count and what both hands do. */
    public String words(Passage event) {
        int bar = event.from().bar();
        String what = told.getOrDefault(event, unwritten(bar));
        String place = count(event).orElseGet(() -> within(event.from()));
        return words.say("event", UnderHeading.name(messages, bar), place, what);
    }

    /** What a sign says that stands for whole bars. */
    private String unwritten(int bar) {
        boolean simile =
                Optional.ofNullable(bars.get(bar)).filter(WrittenBar::simile).isPresent();
        return words.say(simile ? "event.simile" : "rest");
    }

    private String what(Element element) {
        if (!(element instanceof Element.Chord chord)) {
            return words.say("rest");
        }
        var struck = chord.heads().stream().filter(head -> !head.tiedFrom()).toList();
        return struck.isEmpty() ? words.say("event.held", held(chord.heads().get(0))) : notes.of(struck);
    }

    private String held(Head head) {
        return words.name(head.pitch().name());
    }

    private String both(String one, String other) {
        return one.equals(other) ? one : words.say("next", one, other);
    }

    /** Inside a tuplet: after which number. */
    private String within(Position at) {
        var meter = bars.get(at.bar()).inForce().meter();
        long number = at.at().dividedBy(meter.count()).floor() + 1;
        return words.say("event.after", String.valueOf(number));
    }

    private static String apart(Count count) {
        String said = count.toString();
        String number = String.valueOf(count.number());
        return said.equals(number) ? number : number + " " + said.substring(number.length());
    }

    private static Passage passage(WrittenBar bar, Element element) {
        int number = bar.inForce().number();
        return new Passage(
                new Position(number, element.onset()),
                new Position(number, element.onset().plus(element.length())));
    }
}
