package groundbass.document;

import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.score.Arrival;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What a series prints for each technique, where that is not the usual letter: usage differs between teachers. As
 * text: {@code slap=S pop=P}.
 *
 * @param byWord by line text's word for the technique; {@link #NOTHING} where nothing is printed
 */
public record SheetLetters(Map<String, String> byWord) {
    /** Stands for a technique that goes without a letter. */
    public static final String NOTHING = "-";

    private static final int LONGEST = 6;
    private static final Pattern LETTERS = Pattern.compile("[^\\s=\\p{Cntrl}]{1," + LONGEST + "}");

    /** The techniques of either hand, in the order in which a form asks for them. */
    public static final List<String> WORDS = Stream.concat(
                    Arrays.stream(Technique.values()).map(Technique::word),
                    Arrays.stream(Arrival.Kind.values()).map(Arrival.Kind::word))
            .toList();

    public static final SheetLetters USUAL = new SheetLetters(Map.of());

    public SheetLetters {
        byWord = ordered(byWord);
        byWord.forEach((word, letters) -> {
            if (!LETTERS.matcher(letters).matches()) {
                throw new IllegalArgumentException("no letters for " + word + ": " + letters);
            }
        });
    }

    private static Map<String, String> ordered(Map<String, String> byWord) {
        var ordered = new LinkedHashMap<String, String>();
        WORDS.stream().filter(byWord::containsKey).forEach(word -> ordered.put(word, byWord.get(word)));
        if (ordered.size() < byWord.size()) {
            throw new IllegalArgumentException("not a technique among " + byWord.keySet());
        }
        return java.util.Collections.unmodifiableMap(ordered);
    }

    /** What somebody typed for each word; what is left empty is as usual. */
    public static Outcome<SheetLetters> typed(Map<String, String> typed) {
        var problems = new ArrayList<FieldProblem>();
        var kept = new LinkedHashMap<String, String>();
        for (var word : WORDS) {
            String letters = typed.getOrDefault(word, "").strip();
            if (!letters.isEmpty() && !LETTERS.matcher(letters).matches()) {
                problems.add(FieldProblem.of(word, "catalog.problem.letters", LONGEST));
            } else if (!letters.isEmpty()) {
                kept.put(word, letters);
            }
        }
        return problems.isEmpty() ? Outcome.done(new SheetLetters(kept)) : Outcome.refused(problems);
    }

    /** Reads what {@link #toString} wrote. */
    public static SheetLetters parse(String text) {
        return new SheetLetters(Stream.of(text.split(" "))
                .filter(pair -> !pair.isEmpty())
                .map(pair -> pair.split("=", 2))
                .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1])));
    }

    @Override
    public String toString() {
        return byWord.entrySet().stream()
                .map(entry -> entry.getKey() + "=" + entry.getValue())
                .collect(Collectors.joining(" "));
    }
}
