package groundbass.lesson;

import groundbass.engraving.options.TechniqueLetters;
import groundbass.engraving.options.TechniqueLetters.Letter;
import groundbass.score.Arrival;
import groundbass.score.Technique;
import java.util.Arrays;

/** What a sheet prints for each technique unless a series has its own. */
public final class UsualLetters {
    private static final TechniqueLetters USUAL = TechniqueLetters.usual();

    private UsualLetters() {}

    /** @param word of line text, for a technique of either hand; empty where nothing is printed */
    public static String of(String word) {
        return Arrays.stream(Technique.values())
                .filter(technique -> technique.word().equals(word))
                .map(technique -> text(USUAL.of(technique)))
                .findFirst()
                .orElseGet(() -> arrival(word));
    }

    private static String arrival(String word) {
        return Arrays.stream(Arrival.Kind.values())
                .filter(kind -> kind.word().equals(word))
                .map(USUAL::of)
                .findFirst()
                .orElseThrow();
    }

    /** The strokes of the thumb are signs on the sheet, and near relations of them here. */
    private static String text(Letter letter) {
        if (letter instanceof Letter.Text text) {
            return text.text();
        }
        if (letter instanceof Letter.Spanned spanned) {
            return spanned.text();
        }
        return switch (((Letter.Drawn) letter).stroke()) {
            case DOWN -> "\u2293";
            case UP -> "\u2228";
        };
    }
}
