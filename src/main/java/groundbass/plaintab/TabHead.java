package groundbass.plaintab;

import groundbass.score.Credits;
import groundbass.score.Feel;
import groundbass.score.Header;
import groundbass.score.Swing;
import groundbass.score.Tempo;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Title, credits and where it came from, then key, metre, tempo and feel, then the strings from the lowest. */
final class TabHead {
    private TabHead() {}

    static List<String> of(Header header, Credits credits, Messages messages) {
        var rows = new ArrayList<String>();
        Stream.of(credits.title(), credits.composer(), credits.transcriber(), credits.rights(), credits.source())
                .filter(text -> !text.isBlank())
                .forEach(text -> rows.addAll(Wrapped.rows(text, PlainTab.WIDTH)));
        rows.addAll(Wrapped.rows(facts(header, messages), PlainTab.WIDTH));
        rows.addAll(Wrapped.rows(messages.say("sheet.tuning", strings(header)), PlainTab.WIDTH));
        return rows;
    }

    private static String facts(Header header, Messages messages) {
        String feel = feel(header.feel(), messages);
        return Stream.of(messages.say(header.key().said()), header.meter().toString(), tempo(header.tempo()), feel)
                .filter(text -> !text.isEmpty())
                .collect(Collectors.joining(", "));
    }

    /** The beat as a fraction of a whole note: letters have no note shapes. */
    static String tempo(Tempo tempo) {
        return tempo.beat() + " = " + tempo.perMinute();
    }

    static String feel(Feel feel, Messages messages) {
        String swing = feel.swing().map(each -> swing(each, messages)).orElse("");
        String half = feel.halfTime() ? messages.say("sheet.halftime") : "";
        return Stream.of(swing, half).filter(text -> !text.isEmpty()).collect(Collectors.joining(", "));
    }

    private static String swing(Swing swing, Messages messages) {
        return messages.say("sheet.swing." + swing.unit().denominator(), swing.first() + ":" + swing.second());
    }

    private static String strings(Header header) {
        var tuning = header.tuning();
        return IntStream.rangeClosed(1, tuning.size())
                .mapToObj(
                        i -> tuning.string(tuning.size() + 1 - i).pitch().name().toString())
                .collect(Collectors.joining(" "));
    }
}
