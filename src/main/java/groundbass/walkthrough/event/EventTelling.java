package groundbass.walkthrough.event;

import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import groundbass.walkthrough.words.OpeningWords;
import groundbass.walkthrough.words.UnderHeading;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import groundbass.writing.Element.Rest;
import groundbass.writing.Voice;
import groundbass.writing.Writing;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Each written note, chord and rest told by itself, for somebody who goes from one to the next: where it stands, what
 * is new there, what both hands do, how long it lasts. Nothing is longer than {@link EventText#LONGEST}.
 */
public final class EventTelling {
    private static final Comparator<Passage> IN_TIME =
            Comparator.comparing(Passage::from).thenComparing(Passage::to);

    private final Wording words;
    private final Messages messages;
    private final Line line;
    private final Map<Integer, WrittenBar> bars = new HashMap<>();
    private final Map<Passage, String> told = new HashMap<>();

    private EventTelling(Line line, Messages messages, Naming naming) {
        this.line = line;
        this.messages = messages;
        this.words = new Wording(messages, naming);
        var news = new EventNews(words, line);
        var deeds = new EventDeeds(words, line.header().tuning());
        var written = Writing.of(line).bars();
        for (int i = 0; i < written.size(); i++) {
            bars.put(written.get(i).inForce().number(), written.get(i));
            tell(written.get(i), news.of(i, written.get(i)), deeds);
        }
    }

    public static EventTelling of(Line line, Messages messages, Naming naming) {
        return new EventTelling(line, messages, naming);
    }

    /** Where an event begins, its number and syllable apart: {@code 2 e}. */
    public Optional<String> count(Passage event) {
        return Optional.ofNullable(bars.get(event.from().bar()))
                .flatMap(bar -> Count.at(event.from().at(), bar.inForce().meter()))
                .map(EventPlaces::apart);
    }

    /** Bar, count, what is new, what both hands do, and how long it lasts. */
    public String words(Passage event) {
        return told.computeIfAbsent(event, this::unwritten);
    }

    /** What holds for the whole line, in a few sentences. */
    public String opening() {
        return new OpeningWords(words, line).text();
    }

    /** What a sign says that stands for whole bars. */
    private String unwritten(Passage event) {
        int number = event.from().bar();
        var bar = Optional.ofNullable(bars.get(number));
        boolean simile = bar.filter(WrittenBar::simile).isPresent();
        String place = count(event).orElse("");
        return words.say(
                "event", UnderHeading.name(messages, number), place, words.say(simile ? "event.simile" : "rest"));
    }

    private void tell(WrittenBar bar, EventNews.OfBar news, EventDeeds deeds) {
        var events = events(bar);
        var places = new EventPlaces(words, bar.inForce().meter());
        String name = UnderHeading.name(messages, bar.inForce().number());
        events.forEach((event, parts) -> {
            boolean first = event.equals(events.firstKey());
            boolean last = event.equals(events.lastKey());
            var text = new EventText(
                    words,
                    name,
                    places.of(parts.get(0).voice(), parts.get(0).index()),
                    first ? news.before() : List.of(),
                    news(bar, news, events, event),
                    last ? news.after() : List.of());
            told.put(event, text.saying(deeds, parts.stream().map(Part::element).toList()));
        });
    }

    /** What begins until the next moment is told with the first event of its own. */
    private static List<String> news(
            WrittenBar bar, EventNews.OfBar news, TreeMap<Passage, List<Part>> events, Passage event) {
        var before = Optional.ofNullable(events.lowerKey(event));
        var at = event.from().at();
        if (before.filter(other -> other.from().equals(event.from())).isPresent()) {
            return List.of();
        }
        var next = events.keySet().stream()
                .map(other -> other.from().at())
                .filter(other -> other.isAfter(at))
                .findFirst()
                .orElse(bar.bar().to());
        return news.between(before.isEmpty() ? bar.bar().from() : at, next);
    }

    /** One element of a voice. */
    private record Part(Voice voice, int index) {
        Element element() {
            return voice.elements().get(index);
        }
    }

    /** What is drawn in a bar, in time; both voices together where they begin and end together. */
    private static TreeMap<Passage, List<Part>> events(WrittenBar bar) {
        var events = new TreeMap<Passage, List<Part>>(IN_TIME);
        for (var voice : bar.voices()) {
            for (int i = 0; i < voice.elements().size(); i++) {
                var element = voice.elements().get(i);
                if (!(element instanceof Rest rest && rest.hidden())) {
                    events.computeIfAbsent(passage(bar, element), passage -> new ArrayList<>())
                            .add(new Part(voice, i));
                }
            }
        }
        return events;
    }

    private static Passage passage(WrittenBar bar, Element element) {
        int number = bar.inForce().number();
        return new Passage(
                new Position(number, element.onset()),
                new Position(number, element.onset().plus(element.length())));
    }
}
