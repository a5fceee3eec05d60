package groundbass.lesson;

import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The rules of one file of {@code src/main/docs}, each under a heading of the third level: what it says, and a paragraph
 * that begins with {@code Source:}.
 */
public final class RuleBook {
    private static final String HEADING = "### ";
    private static final String SOURCE = "Source: ";
    private static final Pattern NEXT = Pattern.compile("\n#+ ");

    private final Map<String, Rule> rules;

    /**
     * @param name short, and enough by itself
     * @param sentence its first paragraph, without the signs of Markdown
     * @param source who says so; ends with a full stop
     */
    public record Rule(String name, String sentence, String source) {}

    private RuleBook(Map<String, Rule> rules) {
        this.rules = rules;
    }

    /** @throws IllegalArgumentException where a rule has no source, or a name stands twice */
    static RuleBook read(String markdown) {
        var rules = new LinkedHashMap<String, Rule>();
        Arrays.stream(markdown.split("\n" + HEADING))
                .skip(1)
                .map(RuleBook::rule)
                .forEach(rule -> {
                    if (rules.put(rule.name(), rule) != null) {
                        throw new IllegalArgumentException("the rule " + rule.name() + " stands twice");
                    }
                });
        return new RuleBook(rules);
    }

    Optional<Rule> find(String name) {
        return Optional.ofNullable(rules.get(name));
    }

    private static Rule rule(String section) {
        var paragraphs = NEXT.split(section, 2)[0].strip().split("\n\n");
        String name = paragraphs[0];
        String last = paragraphs[paragraphs.length - 1];
        if (paragraphs.length < 3 || !last.startsWith(SOURCE)) {
            throw new IllegalArgumentException("the rule " + name + " needs a sentence and, last, its source");
        }
        return new Rule(name, plain(paragraphs[1]), plain(last.substring(SOURCE.length())));
    }

    private static String plain(String markdown) {
        return markdown.replace("`", "").replace("*", "");
    }
}
