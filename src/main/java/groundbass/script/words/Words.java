package groundbass.script.words;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Cuts a script into sentences of words. Captions without punctuation are cut where speakers take breath. */
public final class Words {
    /** A chord and the bass below it, {@code F/C}, are one word. */
    private static final Pattern WORD =
            Pattern.compile("\\d{1,4}(?:st|nd|rd|ths?|teln?)\\b|\\d{1,3}/\\d{1,3}|\\d{1,6}(?:[.,]\\d{1,3})?"
                    + "|\\p{L}[\\p{L}\\p{N}#♯♭]{0,40}(?:['’]t\\b|/[A-Ha-h](?:[#♯♭]|b?\\b))?|['’](?:s|re|ll|ve|d|m)\\b"
                    + "|\\.{2,}|[.,;:!?()&…—–]|(?<=\\s)-(?=\\s)|\\R[ \\t]*\\R");

    private static final Set<String> ENDS = Set.of(".", "!", "?");
    private static final Set<String> BREATHS = Set.of("now", "okay", "ok", "so", "jetzt");

    /** Words after which nobody takes breath. */
    private static final Set<String> LEADS = Set.of("of", "in", "on", "the", "and", "von", "auf", "der", "und");

    private static final Set<String> PAUSES = Set.of(",", ";", "—", "–", "and", "und");

    /** A sentence longer than this that has no full stop is cut at the next breath. */
    private static final int LONG = 100;

    /** And one longer than this at the next comma, or where it goes on with "and". */
    private static final int LONGER = 130;

    private static final int LONGEST = 200;

    /** One capital letter in so many words is seldom, beyond the first few words. */
    private static final int SELDOM = 50;

    private static final int FEW = 20;

    private Words() {}

    /**
     * Whether a text goes on without punctuation, as captions made by machines do, so that nobody can be sure where one
     * statement ends and the next begins.
     */
    public static boolean isUnpunctuated(String text) {
        int words = 0;
        int marks = 0;
        var matcher = WORD.matcher(text);
        while (matcher.find()) {
            char first = matcher.group().charAt(0);
            boolean word = Character.isLetterOrDigit(first);
            boolean shortened = first == '\'' || first == '’'; // "it's" is no mark
            words += word ? 1 : 0;
            marks += word || shortened ? 0 : 1;
        }
        return words >= 40 && marks * 25 < words;
    }

    /** Whether a text goes without capital letters, but for a name or two, so that notes are written small. */
    public static boolean isLowered(String text) {
        int words = 0;
        int capital = 0;
        var matcher = WORD.matcher(text);
        while (matcher.find()) {
            String word = matcher.group();
            boolean speaker = word.equals("I");
            words += Character.isLetter(word.charAt(0)) ? 1 : 0;
            capital += Character.isUpperCase(word.charAt(0)) && !speaker ? 1 : 0;
        }
        return capital * SELDOM <= words - FEW || capital == 0;
    }

    /** The sentences in order; the mark that ends one is its last word. */
    public static List<List<Word>> sentences(String text) {
        var sentences = new ArrayList<List<Word>>();
        var sentence = new ArrayList<Word>();
        var matcher = WORD.matcher(text);
        while (matcher.find()) {
            var word = new Word(matcher.group(), matcher.start());
            if (isFull(sentence, word)) {
                sentences.add(List.copyOf(sentence));
                sentence.clear();
            }
            boolean blank = word.raw().isBlank();
            if (!blank) {
                sentence.add(word);
            }
            if ((blank || ENDS.contains(word.raw())) && !sentence.isEmpty()) {
                sentences.add(List.copyOf(sentence));
                sentence.clear();
            }
        }
        if (!sentence.isEmpty()) {
            sentences.add(List.copyOf(sentence));
        }
        return sentences;
    }

    /** "Frets 3 and 4": after a figure "and" may lead to another. */
    private static boolean isInRow(List<Word> sentence) {
        return sentence.get(sentence.size() - 1).raw().matches("\\d+");
    }

    private static boolean isFull(List<Word> sentence, Word next) {
        return sentence.size() >= LONGEST
                || (sentence.size() >= LONGER && PAUSES.contains(next.folded()) && !isInRow(sentence))
                || (sentence.size() >= LONG
                        && BREATHS.contains(next.folded())
                        && !LEADS.contains(sentence.get(sentence.size() - 1).folded()));
    }
}
