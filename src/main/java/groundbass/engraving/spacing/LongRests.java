package groundbass.engraving.spacing;

import groundbass.score.Changes;
import groundbass.score.Repeats;
import groundbass.writing.Element.Rest;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;

/**
 * Silent bars that one sign may stand for: those between which nothing else stands, no tempo, section, key, sign of
 * repeat or words (rule: rests-together).
 */
public final class LongRests {
    private LongRests() {}

    /** A bar, or the first of several silent ones. */
    public record Stretch(WrittenBar bar, int bars) {}

    public static List<Stretch> of(List<WrittenBar> bars, boolean together) {
        var stretches = new ArrayList<Stretch>();
        int first = 0;
        while (first < bars.size()) {
            int end = first + 1;
            while (together && end < bars.size() && isSilent(bars.get(first)) && goesOn(bars.get(end))) {
                end++;
            }
            stretches.add(new Stretch(bars.get(first), end - first));
            first = end;
        }
        return stretches;
    }

    private static boolean goesOn(WrittenBar bar) {
        return isSilent(bar) && bar.bar().changes().equals(Changes.NONE);
    }

    private static boolean isSilent(WrittenBar written) {
        var bar = written.bar();
        boolean bare = bar.repeats().equals(Repeats.NONE)
                && bar.chords().isEmpty()
                && bar.directions().isEmpty()
                && bar.from().isZero()
                && bar.to().equals(written.inForce().meter().length());
        return bare
                && written.voices().stream()
                        .allMatch(voice -> voice.elements().get(0) instanceof Rest rest && rest.wholeBar());
    }
}
