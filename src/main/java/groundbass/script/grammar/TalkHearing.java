package groundbass.script.grammar;

import groundbass.script.lexicon.Vocabulary;
import groundbass.script.words.Word;
import groundbass.script.words.Words;
import java.util.List;
import java.util.Locale;

/**
 * How a script is to be heard.
 *
 * @param unpunctuated whether it goes on without marks
 * @param lowered whether it goes without capital letters
 * @param title what the line is called, in small letters, word by word; empty where it has no name
 */
public record TalkHearing(Vocabulary vocabulary, boolean unpunctuated, boolean lowered, List<String> title) {
    public TalkHearing {
        title = List.copyOf(title);
    }

    public static TalkHearing of(String script, String title, Locale language) {
        var words = Words.sentences(title).stream()
                .flatMap(List::stream)
                .map(Word::folded)
                .toList();
        return new TalkHearing(Vocabulary.of(language), Words.isUnpunctuated(script), Words.isLowered(script), words);
    }

    /** The clauses of a sentence, where its marks or its words say that they end. */
    public List<Clause> clauses(List<Word> sentence) {
        return run(sentence).clauses();
    }

    /** The units of a sentence, and where in it clauses may begin. */
    public Run run(List<Word> sentence) {
        return new Run(ConstituentReader.units(sentence, this), unpunctuated, vocabulary.order());
    }
}
