package groundbass.lesson;

import groundbass.document.SheetLetters;
import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.options.TechniqueLetters.Letter;
import groundbass.score.Arrival;
import groundbass.score.Technique;

/** A series' own letters among the usual ones. */
final class PrintedLetters {
    private PrintedLetters() {}

    static TechniqueLetters of(SheetLetters chosen) {
        var letters = TechniqueLetters.usual();
        for (var technique : Technique.values()) {
            String text = chosen.byWord().get(technique.word());
            if (text != null) {
                letters = letters.with(technique, letter(letters.of(technique), text));
            }
        }
        for (var kind : Arrival.Kind.values()) {
            String text = chosen.byWord().get(kind.word());
            if (text != null) {
                letters = letters.with(kind, text.equals(SheetLetters.NOTHING) ? "" : text);
            }
        }
        return letters;
    }

    /** Another text stands where the usual one would; in place of a sign it stands at every note. */
    private static Letter letter(Letter usual, String text) {
        if (text.equals(SheetLetters.NOTHING)) {
            return new Letter.Text("", false);
        }
        return usual instanceof Letter.Spanned ? new Letter.Spanned(text) : new Letter.Text(text, usual.everyNote());
    }
}
