package groundbass.walkthrough.words;

import groundbass.score.Feel;
import groundbass.score.Line;
import groundbass.score.Swing;
import groundbass.score.Tuning;
import groundbass.score.Tuning.OpenString;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** What holds for the whole line. */
public final class OpeningWords {
    private final Wording words;
    private final Line line;

    public OpeningWords(Wording words, Line line) {
        this.words = words;
        this.line = line;
    }

    public String text() {
        var header = line.header();
        var sentences = new ArrayList<String>();
        var form = new FormWords(words, line);
        sentences.add(form.form());
        sentences.add(words.say(
                "opening",
                words.key(header.key()),
                header.meter().toString(),
                words.tempo(header.tempo(), header.meter())));
        if (header.meter().isGrouped()) {
            sentences.add(words.say(
                    "opening.groups",
                    words.list(
                            header.meter().beats().stream().map(String::valueOf).toList())));
        }
        if (!header.feel().equals(Feel.STRAIGHT)) {
            sentences.add(feel(words, header.feel()));
        }
        if (!header.tuning().equals(Tuning.STANDARD)) {
            sentences.add(words.say("opening.strings", words.list(strings())));
        }
        sentences.add(form.count());
        return String.join(" ", sentences);
    }

    static String feel(Wording words, Feel feel) {
        String pairs = feel.swing().map(swing -> swing(words, swing)).orElseGet(() -> words.say("feel.straight"));
        return feel.halfTime() ? pairs + " " + words.say("feel.half") : pairs;
    }

    private static String swing(Wording words, Swing swing) {
        return words.say(
                "feel." + swing.unit().denominator(), words.number(swing.first()), words.number(swing.second()));
    }

    private List<String> strings() {
        var lowestFirst = new ArrayList<>(line.header().tuning().strings());
        Collections.reverse(lowestFirst);
        return lowestFirst.stream().map(this::string).toList();
    }

    private String string(OpenString string) {
        String name = words.name(string.name());
        return string.name().equals(string.pitch().name())
                ? name
                : words.say("opening.sounding", name, words.name(string.pitch().name()));
    }
}
