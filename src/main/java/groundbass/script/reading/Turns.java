package groundbass.script.reading;

import groundbass.score.Line;
import groundbass.script.claims.Chunk;
import groundbass.script.claims.Said;
import groundbass.script.words.Lexicon;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.script.words.Word;
import java.util.List;
import java.util.Optional;

/** Follows what part of a line a speaker turns to, sentence by sentence. */
public final class Turns {
    private final Line line;
    private final Lexicon lexicon;
    private int lastBar;

    public Turns(Line line, Lexicon lexicon) {
        this.line = line;
        this.lexicon = lexicon;
        this.lastBar = line.firstNumber() - 1;
    }

    public sealed interface Turn {}

    /** To a bar that was not spoken of before. */
    public record ToBars(int first, int last) implements Turn {}

    /** To the line as a whole. */
    public record ToWhole(How how) implements Turn {}

    public enum How {
        SLOWLY,
        FULL,
        WHOLE
    }

    public Optional<Turn> next(List<Word> sentence) {
        var terms = new Terms(lexicon.terms(sentence));
        var chunks = Chunker.chunks(terms, line.header().tuning());
        return bars(chunks).or(() -> whole(terms));
    }

    private Optional<Turn> bars(List<Said> chunks) {
        var named = chunks.stream()
                .filter(said -> said.is(Chunk.Bars.class))
                .findFirst()
                .map(said -> ((Chunk.Bars) said.chunk()).numbers());
        int last = line.firstNumber() + line.bars().size() - 1;
        var turn = named.filter(
                numbers -> numbers.get(0) > lastBar && numbers.stream().allMatch(number -> number <= last));
        turn.ifPresent(numbers -> lastBar = numbers.get(numbers.size() - 1));
        return turn.map(numbers -> new ToBars(numbers.get(0), numbers.get(numbers.size() - 1)));
    }

    /** Plans such as "I'll play the whole line later" are no turn: only what the sentence begins with is. */
    private Optional<Turn> whole(Terms terms) {
        boolean turned = lastBar >= line.firstNumber();
        if (!turned || terms.has(Sense.NOT)) {
            return Optional.empty();
        }
        if (terms.has(Sense.FULL_SPEED)) {
            return Optional.of(new ToWhole(How.FULL));
        }
        if (terms.has(Sense.THE_WHOLE)) {
            boolean slowly = terms.has(Sense.SLOWLY);
            return slowly || !(terms.has(Sense.PRONOUN) || terms.has(Sense.THAT))
                    ? Optional.of(new ToWhole(slowly ? How.SLOWLY : How.WHOLE))
                    : Optional.empty();
        }
        return Optional.empty();
    }
}
