package groundbass.walkthrough.words;

import groundbass.text.Messages;
import java.util.stream.Stream;

/** What is told of a bar where the bar's name stands over it already. */
public final class UnderHeading {
    /** Stands for what follows in a sentence; nobody types it. */
    private static final String REST = "\0";

    private UnderHeading() {}

    /** How a bar is called: {@code Bar 3}, {@code Pickup}. */
    public static String name(Messages messages, int bar) {
        return bar == 0 ? messages.say("walkthrough.pickup") : messages.say("walkthrough.bar", String.valueOf(bar));
    }

    /** A step's text without the name of its bar. */
    public static String text(Messages messages, int bar, String text) {
        return Stream.of("walkthrough.heading", "walkthrough.step", "walkthrough.sentence")
                .map(pattern -> messages.say(pattern, name(messages, bar), REST).split(REST)[0])
                .filter(text::startsWith)
                .map(start -> capital(text.substring(start.length()).strip()))
                .findFirst()
                .orElse(text);
    }

    public static String capital(String sentence) {
        return sentence.isEmpty() ? "" : Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }
}
