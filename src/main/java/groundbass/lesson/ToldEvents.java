package groundbass.lesson;

import groundbass.engraving.svg.EventWords;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.text.Messages;
import groundbass.walkthrough.EventTelling;
import groundbass.walkthrough.Naming;
import java.util.Optional;

/** The words of a line's events, as a drawing wants them. */
record ToldEvents(EventTelling telling) implements EventWords {
    static ToldEvents of(Line line, Messages messages) {
        return new ToldEvents(EventTelling.of(line, messages, Naming.USUAL));
    }

    @Override
    public Optional<String> count(Passage event) {
        return telling.count(event);
    }

    @Override
    public String words(Passage event) {
        return telling.words(event);
    }
}
