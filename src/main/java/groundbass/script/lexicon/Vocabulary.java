package groundbass.script.lexicon;

import groundbass.script.words.Word;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;

/**
 * The words of one language, from a table beside this class. Words that mean something together stand there joined by
 * {@code _}. A word that is not in it may be put together of words that are, as German does: an eighth and a rest make an
 * eighth rest, a hundred and sixteen a number.
 */
public final class Vocabulary {
    private static final List<String> KNOWN = List.of("en", "de");
    private static final Map<String, Vocabulary> LOADED = new ConcurrentHashMap<>();
    private static final int SHORTEST_PART = 3;
    private static final SortedSet<Integer> NONE = Collections.unmodifiableSortedSet(new TreeSet<>());

    private final Map<String, Map<Category, String>> words = new HashMap<>();
    /** How many words those have that are joined with this one as the first; the longest first. */
    private final Map<String, SortedSet<Integer>> joined = new HashMap<>();

    private final boolean compounding;
    private final WordOrder order;

    private Vocabulary(String language) {
        this.compounding = language.equals("de");
        this.order = language.equals("de") ? WordOrder.VERB_SECOND : WordOrder.SUBJECT_FIRST;
        text(language)
                .lines()
                .filter(row -> !row.isBlank() && !row.startsWith("#"))
                .forEach(this::read);
    }

    /** The words of a language; English where there is no table for it. */
    public static Vocabulary of(Locale language) {
        return LOADED.computeIfAbsent(
                KNOWN.contains(language.getLanguage()) ? language.getLanguage() : KNOWN.get(0), Vocabulary::new);
    }

    private void read(String row) {
        int colon = row.startsWith("COLON") ? row.indexOf(':') : row.indexOf(": ");
        String[] head = row.substring(0, colon).split(" ", 2);
        for (String word : row.substring(colon + 1).strip().split(" +")) {
            words.computeIfAbsent(word, unseen -> new EnumMap<>(Category.class))
                    .put(Category.valueOf(head[0]), head.length > 1 ? head[1] : "");
            String[] several = word.split("_");
            if (several.length > 1) {
                joined.computeIfAbsent(several[0], unseen -> new TreeSet<>(Comparator.reverseOrder()))
                        .add(several.length);
            }
        }
    }

    private static String text(String language) {
        try (var in = Objects.requireNonNull(Vocabulary.class.getResourceAsStream(language + ".lexicon"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public WordOrder order() {
        return order;
    }

    public List<SpokenWord> tokens(List<Word> sentence) {
        var tokens = new ArrayList<SpokenWord>();
        int i = 0;
        while (i < sentence.size()) {
            int after = afterJoined(sentence, i);
            if (after > i) {
                tokens.add(joined(sentence.subList(i, after)));
            } else {
                tokens.addAll(tokens(sentence.get(i)));
                after = i + 1;
            }
            i = after;
        }
        return tokens;
    }

    /** Index after the words from here on that mean something together; the same where there are none. */
    private int afterJoined(List<Word> sentence, int from) {
        for (int many : joined.getOrDefault(sentence.get(from).folded(), NONE)) {
            boolean known =
                    from + many <= sentence.size() && words.containsKey(key(sentence.subList(from, from + many)));
            if (known) {
                return from + many;
            }
        }
        return from;
    }

    private static String key(List<Word> several) {
        return several.stream().map(Word::folded).collect(Collectors.joining("_"));
    }

    private SpokenWord joined(List<Word> several) {
        String raw = several.stream().map(Word::raw).collect(Collectors.joining(" "));
        return new SpokenWord(
                words.get(key(several)),
                raw,
                several.get(0).from(),
                several.get(several.size() - 1).to());
    }

    private List<SpokenWord> tokens(Word word) {
        String folded = word.folded();
        var known = words.get(folded);
        if (known != null) {
            return List.of(token(known, word));
        }
        if (folded.matches("\\d{1,4}")) {
            return List.of(token(Map.of(Category.NUMBER, folded), word));
        }
        if (folded.matches("(4|8|16|32)(ths?|teln?)")) { // "two 8th notes"
            String figure = folded.replaceAll("\\D", "");
            return List.of(token(
                    folded.endsWith("th")
                            ? Map.of(Category.ORDINAL, figure, Category.LENGTH, figure)
                            : Map.of(Category.LENGTH, figure),
                    word));
        }
        if (folded.matches("\\d{1,2}(st|nd|rd|th)")) {
            return List.of(token(Map.of(Category.ORDINAL, folded.replaceAll("\\D", "")), word));
        }
        var parts = compounding ? parts(folded) : Optional.<List<String>>empty();
        return parts.map(each ->
                        each.stream().map(part -> token(words.get(part), word)).toList())
                .orElseGet(() -> List.of(token(Map.of(), word)));
    }

    private static SpokenWord token(Map<Category, String> categories, Word word) {
        return new SpokenWord(categories, word.raw(), word.from(), word.to());
    }

    /** The longest first parts that leave a rest which is made of words too; "und" within a number is dropped. */
    private Optional<List<String>> parts(String word) {
        if (word.isEmpty()) {
            return Optional.of(List.of());
        }
        for (int length = word.length(); length >= SHORTEST_PART; length--) {
            String first = word.substring(0, length);
            if (isPart(first)) {
                var rest = parts(word.substring(length));
                if (rest.isPresent()) {
                    var all = new ArrayList<>(List.of(first));
                    all.addAll(rest.get());
                    return Optional.of(numbered(all));
                }
            }
        }
        return Optional.empty();
    }

    private boolean isPart(String word) {
        var known = words.get(word);
        return known != null
                && (word.equals("und")
                        || word.equals("ein")
                        || known.containsKey(Category.NUMBER)
                        || known.containsKey(Category.TENS)
                        || known.containsKey(Category.HUNDRED)
                        || known.containsKey(Category.LENGTH)
                        || known.containsKey(Category.NOTE)
                        || known.containsKey(Category.REST)
                        || known.containsKey(Category.TUPLET)
                        || known.containsKey(Category.BAR)
                        || known.containsKey(Category.CHORD)
                        || known.containsKey(Category.STRING)
                        || known.containsKey(Category.LINE)
                        || known.containsKey(Category.BASS));
    }

    /** Ones are spoken before tens: "sechsundneunzig" becomes ninety, six. */
    private List<String> numbered(List<String> parts) {
        boolean turned = parts.size() == 3
                && parts.get(1).equals("und")
                && words.get(parts.get(2)).containsKey(Category.TENS);
        if (turned) {
            return List.of(parts.get(2), parts.get(0).equals("ein") ? "eins" : parts.get(0));
        }
        return parts;
    }
}
