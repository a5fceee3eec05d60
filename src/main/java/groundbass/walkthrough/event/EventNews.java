package groundbass.walkthrough.event;

import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.theory.ChordSymbol;
import groundbass.walkthrough.words.SignWords;
import groundbass.walkthrough.words.SignWords.Sign;
import groundbass.walkthrough.words.Standing;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.WrittenBar;
import java.util.List;
import java.util.Optional;

/** What is new at the events of a line: sections, changes, repeats, chords where they change, loudness and words. */
final class EventNews {
    private final Wording words;
    private final SignWords signs;
    private Optional<ChordSymbol> holding = Optional.empty();

    EventNews(Wording words, Line line) {
        this.words = words;
        this.signs = new SignWords(words, line);
    }

    /** @param before, after sentences that the first and the last event of the bar tell */
    record OfBar(List<String> before, List<String> after, Standing standing) {
        /** What begins from one moment until before another, the first said of an event there. */
        List<String> between(Fraction from, Fraction to) {
            return standing.between(from, to);
        }
    }

    /** Bars are asked in their order, for what holds already is not said again. */
    OfBar of(int index, WrittenBar written) {
        return new OfBar(
                signs.before(index).stream().map(Sign::text).toList(),
                signs.after(index).stream().map(Sign::text).toList(),
                new Standing(words, written, this::chord, Optional.empty()));
    }

    private Optional<ChordSymbol> chord(ChordAt chord) {
        var symbol = Optional.of(chord.chord());
        if (symbol.equals(holding)) {
            return Optional.empty();
        }
        holding = symbol;
        return symbol;
    }
}
