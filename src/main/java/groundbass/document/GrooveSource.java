package groundbass.document;

import groundbass.groove.BassTone;
import groundbass.groove.ChordTone;
import groundbass.groove.Instruments;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;

/**
 * The band around the line. Its drums: a grid as typed, or where that is blank a ready one by its name; both blank: the
 * program chooses by meter and feel.
 *
 * @param feel how much they are played as people play, one of {@link #FEELS}; the first where it is none of them
 * @param bass what the bass is heard through, one of {@link #BASSES}; the first where it is none of them
 * @param chords what the chords are played on, one of {@link #CHORDS}; the first where it is none of them
 */
public record GrooveSource(String name, String text, String feel, String bass, String chords) {
    /** In percent: as people play, half as much, as a machine plays. */
    public static final List<String> FEELS = List.of("100", "50", "0");

    public static final List<String> BASSES =
            Arrays.stream(BassTone.values()).map(BassTone::word).toList();
    public static final List<String> CHORDS =
            Arrays.stream(ChordTone.values()).map(ChordTone::word).toList();

    public static final GrooveSource CHOSEN_BY_METER = new GrooveSource("", "");

    public GrooveSource {
        Objects.requireNonNull(name);
        Objects.requireNonNull(text);
        feel = known(feel, FEELS);
        bass = known(bass, BASSES);
        chords = known(chords, CHORDS);
    }

    /** Played as people play, on what is usual. */
    public GrooveSource(String name, String text) {
        this(name, text, FEELS.get(0), BASSES.get(0), CHORDS.get(0));
    }

    private static String known(String word, List<String> words) {
        return words.contains(word) ? word : words.get(0);
    }

    public int feelPercent() {
        return Integer.parseInt(feel);
    }

    public Instruments instruments() {
        return new Instruments(
                BassTone.ofWord(bass).orElseThrow(), ChordTone.ofWord(chords).orElseThrow());
    }
}
