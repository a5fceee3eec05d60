package groundbass.engraving.spacing;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.Spread;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.NoteValue.Base;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** Shapes and places of the heads of one chord: seconds stand on both sides of the stem. */
public final class Heads {
    private Heads() {}

    /**
     * Lowest first.
     *
     * @param lower by how many positions all stand lower than their pitch, under an octave sign
     */
    static List<HeadPlace> place(Chord chord, boolean up, int lower) {
        var places = new ArrayList<HeadPlace>();
        for (var head : chord.heads()) {
            places.add(new HeadPlace(
                    head,
                    Positions.of(head) - lower,
                    0,
                    glyph(head, chord.value().base())));
        }
        places.sort(Comparator.comparingInt(HeadPlace::position));
        double stemSide = places.stream().mapToDouble(HeadPlace::width).max().orElse(0);
        for (int i = 0; i < places.size(); i++) {
            var place = places.get(i);
            places.set(i, up ? place.shifted(stemSide - place.width()) : place);
        }
        displaceSeconds(places, up, stemSide - Measures.STEM);
        return places;
    }

    private static void displaceSeconds(List<HeadPlace> lowestFirst, boolean up, double by) {
        boolean displaced = false;
        for (int n = 1; n < lowestFirst.size(); n++) {
            int i = up ? n : lowestFirst.size() - 1 - n;
            int neighbour = up ? i - 1 : i + 1;
            int interval = Math.abs(
                    lowestFirst.get(i).position() - lowestFirst.get(neighbour).position());
            displaced = interval <= 1 && !displaced;
            if (displaced) {
                lowestFirst.set(i, lowestFirst.get(i).shifted(up ? by : -by));
            }
        }
    }

    private static Glyph glyph(Head head, Base base) {
        if (head.note().isDead()) {
            return shape(base, Glyph.X_WHOLE, Glyph.X_HALF, Glyph.X_BLACK);
        }
        if (head.note().ornaments().harmonic().isPresent()) {
            return shape(base, Glyph.DIAMOND_WHOLE, Glyph.DIAMOND_HALF, Glyph.DIAMOND_BLACK);
        }
        return shape(base, Glyph.HEAD_WHOLE, Glyph.HEAD_HALF, Glyph.HEAD_BLACK);
    }

    private static Glyph shape(Base base, Glyph whole, Glyph half, Glyph black) {
        return switch (base) {
            case WHOLE -> whole;
            case HALF -> half;
            case QUARTER, EIGHTH, SIXTEENTH, THIRTY_SECOND, SIXTY_FOURTH -> black;
        };
    }

    /** What is said of the chord that begins in these cells of one column. */
    public static Optional<Spread> spread(List<Cell> cells) {
        for (var cell : cells) {
            for (var place : cell.heads()) {
                var spread = place.head().note().ornaments().spread();
                if (spread.isPresent() && !place.head().tiedFrom()) {
                    return spread;
                }
            }
        }
        return Optional.empty();
    }

    public static boolean isGhost(Head head) {
        return head.note().has(Mark.GHOST);
    }
}
