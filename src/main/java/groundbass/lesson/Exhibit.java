package groundbass.lesson;

import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Staves;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One feature of the engraving in a small example.
 *
 * @param rules the names of the rules that it shows, in {@code src/main/docs/engraving-rules.md}
 * @param look what somebody who looks it over should see
 * @param show which staves and ways of writing, as {@code notation, simile}; empty for what is usual
 * @param text the line
 */
record Exhibit(String title, List<String> rules, String look, List<String> show, String text) {
    private static final String END = "----";
    private static final String TITLE = "# ";

    Exhibit {
        rules = List.copyOf(rules);
        show = List.copyOf(show);
    }

    /** Reads examples that lines of dashes part: a title, named facts, a blank line, line text. */
    static List<Exhibit> read(String all) {
        return Arrays.stream(all.split("\n" + END + "\n")).map(Exhibit::one).toList();
    }

    private static Exhibit one(String text) {
        int blank = text.indexOf("\n\n");
        Map<String, String> facts = new LinkedHashMap<>();
        text.substring(0, blank).lines().skip(1).forEach(row -> {
            var parts = row.split("\\s+", 2);
            facts.put(parts[0], parts[1]);
        });
        return new Exhibit(
                text.lines().findFirst().orElseThrow().substring(TITLE.length()),
                list(facts.get("rule")),
                facts.get("look"),
                list(facts.getOrDefault("show", "")),
                text.substring(blank + 2));
    }

    private static List<String> list(String words) {
        return Arrays.stream(words.split(", *")).filter(word -> !word.isEmpty()).toList();
    }

    Reading reading() {
        return LineText.read(text);
    }

    SheetOptions options(SheetOptions usual) {
        var staves =
                show.contains("notation") ? Staves.NOTATION_ONLY : show.contains("tab") ? Staves.TAB_ONLY : Staves.BOTH;
        return usual.with(staves)
                .withSimile(show.contains("simile"))
                .withRestsTogether(show.contains("rests together"));
    }
}
