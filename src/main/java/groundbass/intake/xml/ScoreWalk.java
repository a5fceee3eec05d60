package groundbass.intake.xml;

import groundbass.intake.notice.Unreadable;
import groundbass.intake.xml.document.Document;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlSource;
import groundbass.text.Message;
import java.util.Map;
import java.util.Set;

/** One walk through a score, whichever of its two forms it has: parts of measures, or measures of parts. */
final class ScoreWalk {
    private static final Set<String> HEAD = Set.of("work", "movement-title", "identification", "part-list");

    private final XmlSource source;
    private final Visitor visitor;

    /** Who is shown the score on the way. */
    interface Visitor {
        /** What stands before the music. */
        void head(XmlElement element);

        /** Whether the music of a part is wanted. */
        boolean wants(String part);

        void beginMeasure(String part, Map<String, String> attributes);

        /** What a measure has, one after the other. */
        void item(String part, XmlElement item);

        void endMeasure(String part);
    }

    private ScoreWalk(XmlSource source, Visitor visitor) {
        this.source = source;
        this.visitor = visitor;
    }

    static void of(Document document, Visitor visitor) throws Unreadable {
        try (var source = XmlSource.of(document)) {
            if (!source.next()) {
                throw noScore();
            }
            new ScoreWalk(source, visitor).score(source.name());
        }
    }

    private static Unreadable noScore() {
        return new Unreadable(Message.of("intake.refused.root"));
    }

    private void score(String root) throws Unreadable {
        switch (root) {
            case "score-partwise" ->
                each("part", part -> {
                    String id = id(part);
                    eachMeasure(measure -> measure(id, measure));
                });
            case "score-timewise" -> each("measure", measure -> each("part", part -> measure(id(part), measure)));
            default -> throw noScore();
        }
    }

    /** What is done with an element that has begun; it is left at its end. */
    @FunctionalInterface
    private interface Inside {
        void of(Map<String, String> attributes) throws Unreadable;
    }

    private static String id(Map<String, String> part) {
        return part.getOrDefault("id", "").strip();
    }

    private void eachMeasure(Inside inside) throws Unreadable {
        each("measure", inside);
    }

    /** To the end of the element that has begun. */
    private void each(String name, Inside inside) throws Unreadable {
        while (source.next() && source.isStart()) {
            if (source.name().equals(name)) {
                inside.of(source.attributes());
            } else if (HEAD.contains(source.name())) {
                visitor.head(source.element());
            } else {
                source.skip();
            }
        }
    }

    private void measure(String part, Map<String, String> attributes) throws Unreadable {
        if (!visitor.wants(part)) {
            source.skip();
            return;
        }
        visitor.beginMeasure(part, attributes);
        while (source.next() && source.isStart()) {
            visitor.item(part, source.element());
        }
        visitor.endMeasure(part);
    }
}
