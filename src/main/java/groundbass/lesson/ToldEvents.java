package groundbass.lesson;

import groundbass.engraving.svg.EventWords;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.text.Messages;
import groundbass.walkthrough.event.EventTelling;
import groundbass.walkthrough.words.Naming;
import java.util.Optional;

/** The words of a line's events, as a drawing wants them. */
record ToldEvents(EventTelling telling, Messages messages) implements EventWords {
    static ToldEvents of(Line line, Messages messages) {
        return new ToldEvents(EventTelling.of(line, messages, Naming.USUAL), messages);
    }

    @Override
    public Optional<String> count(Passage event) {
        return telling.count(event);
    }

    @Override
    public String bars(Passage system) {
        return bars(system, messages);
    }

    /** {@code Bars 1 to 4}. */
    static String bars(Passage system, Messages messages) {
        int first = system.from().bar();
        int last =
                system.to().at().isZero() ? system.to().bar() - 1 : system.to().bar();
        return last <= first ? messages.say("sheet.system.one", first) : messages.say("sheet.system", first, last);
    }

    @Override
    public String words(Passage event) {
        return telling.words(event);
    }
}
