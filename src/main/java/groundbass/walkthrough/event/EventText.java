package groundbass.walkthrough.event;

import groundbass.text.Cut;
import groundbass.walkthrough.words.UnderHeading;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Element;
import java.util.List;
import java.util.stream.Stream;

/**
 * The text of one event, no longer than somebody can keep in mind who hears it once.
 *
 * @param bar its name
 * @param place the count in it
 * @param before, after sentences of what is written around the bar
 * @param news what begins here: a chord, loudness, words
 */
record EventText(Wording words, String bar, String place, List<String> before, List<String> news, List<String> after) {
    /** Letters: common practice for alternative texts, no source; a screen reader cannot be stopped inside one. */
    static final int LONGEST = 300;

    private static final int LONGEST_NEWS = 90;
    private static final String CUT = "…";

    /** In full where that is short enough, else in the fewest words. */
    String saying(EventDeeds deeds, List<Element> elements) {
        return Stream.of(
                        text(deeds.full(elements)),
                        text(deeds.brief(elements)),
                        shorter().text(deeds.brief(elements)))
                .filter(text -> text.length() <= LONGEST)
                .findFirst()
                .orElseGet(() -> cut(shorter().text(deeds.brief(elements)), LONGEST));
    }

    private EventText shorter() {
        return new EventText(words, bar, place, shorter(before), shorter(news), shorter(after));
    }

    private static List<String> shorter(List<String> texts) {
        return texts.stream().map(text -> cut(text, LONGEST_NEWS)).toList();
    }

    private static String cut(String text, int longest) {
        return text.length() <= longest ? text : Cut.to(text, longest - CUT.length()) + CUT;
    }

    private String text(String deed) {
        String led = news.stream()
                .reduce((one, two) -> words.say("heading", one, two))
                .map(all -> words.say("event.news", all, deed))
                .orElse(deed);
        String lead = before.isEmpty() ? led : String.join(" ", before) + " " + UnderHeading.capital(led);
        String text = words.say("event", bar, place, lead);
        return after.isEmpty() ? text : words.say("event.then", text, String.join(" ", after));
    }
}
