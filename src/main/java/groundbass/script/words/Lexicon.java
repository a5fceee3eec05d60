package groundbass.script.words;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The words of one language, from a table beside this class: {@code SENSE value: phrase | phrase}. Several senses of one
 * phrase add up; of several phrases that fit, the longest counts.
 */
public final class Lexicon {
    private static final List<String> KNOWN = List.of("en", "de");
    private static final Map<String, Lexicon> LOADED = new ConcurrentHashMap<>();

    private final Map<String, List<Entry>> byFirstWord = new HashMap<>();

    private record Entry(List<String> words, Map<Sense, String> senses) {}

    private Lexicon(String language) {
        for (String row : text(language).split("\\R")) {
            if (!row.isBlank() && !row.startsWith("#")) {
                read(row);
            }
        }
        byFirstWord
                .values()
                .forEach(entries -> entries.sort(
                        Comparator.comparing((Entry entry) -> entry.words().size())
                                .reversed()));
    }

    /** The words of a language; English where there is no table for it. */
    public static Lexicon of(Locale language) {
        return LOADED.computeIfAbsent(
                KNOWN.contains(language.getLanguage()) ? language.getLanguage() : KNOWN.get(0), Lexicon::new);
    }

    /** The sentence's words as terms; punctuation included, words of no known sense left plain. */
    public List<Term> terms(List<Word> sentence) {
        var folded = sentence.stream().map(Word::folded).toList();
        var terms = new ArrayList<Term>();
        int i = 0;
        while (i < sentence.size()) {
            var entry = longest(folded, i);
            int last = i + Math.max(1, entry.words().size()) - 1;
            terms.add(new Term(
                    entry.senses(),
                    sentence.get(i).raw(),
                    sentence.get(i).from(),
                    sentence.get(last).to()));
            i = last + 1;
        }
        return terms;
    }

    private Entry longest(List<String> words, int at) {
        return byFirstWord.getOrDefault(words.get(at), List.of()).stream()
                .filter(entry -> at + entry.words().size() <= words.size()
                        && words.subList(at, at + entry.words().size()).equals(entry.words()))
                .findFirst()
                .orElseGet(() -> new Entry(List.of(), plain(words.get(at))));
    }

    /** Figures are the same in every language. */
    private static Map<Sense, String> plain(String word) {
        if (word.matches("\\d{1,4}")) {
            return Map.of(Sense.NUMBER, word);
        }
        if (word.matches("\\d{1,4}(st|nd|rd|th)")) {
            return Map.of(Sense.ORDINAL, word.replaceAll("\\D", ""));
        }
        return Map.of(Sense.PLAIN, word);
    }

    private void read(String row) {
        String[] parts = row.split(":", 2);
        String[] head = parts[0].strip().split(" +", 2);
        var sense = Sense.valueOf(head[0]);
        String value = head.length > 1 ? head[1].strip() : "";
        for (String phrase : parts[1].split("\\|")) {
            add(List.of(phrase.strip().split(" +")), sense, value);
        }
    }

    private void add(List<String> words, Sense sense, String value) {
        var entries = byFirstWord.computeIfAbsent(words.get(0), first -> new ArrayList<>());
        entries.stream()
                .filter(entry -> entry.words().equals(words))
                .findFirst()
                .orElseGet(() -> {
                    var entry = new Entry(words, new EnumMap<>(Sense.class));
                    entries.add(entry);
                    return entry;
                })
                .senses()
                .put(sense, value);
    }

    private static String text(String language) {
        try (var in = Objects.requireNonNull(Lexicon.class.getResourceAsStream(language + ".words"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
