package groundbass.engraving.sign.staff;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape.Run;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.writing.Head;

/**
 * Frets and crosses on their strings, centred under the heads; in parentheses where a held note enters a system
 * (rule: tab-tied-note, numbers-under-heads, tab-chord-column).
 */
public final class TabNumbers implements Concern {
    @Override
    public void draw(Sketch sketch) {
        for (var spot : sketch.spots()) {
            for (var head : spot.cell().heads()) {
                if (Labels.isShown(head.head())) {
                    draw(sketch, spot, head);
                } else if (isEntering(spot, head.head())) {
                    String text = printed(spot, head.head());
                    double y = Measures.stringY(head.head().note().string());
                    sketch.tab().add(Kind.FRET, spot.owner(), number(text, Labels.size(text), spot.middle(), y));
                }
            }
        }
    }

    private static void draw(Sketch sketch, Spot spot, HeadPlace head) {
        NoteMarks.use(sketch, head.head());
        String text = Labels.text(head.head());
        double y = Measures.stringY(head.head().note().string());
        sketch.tab().add(Kind.FRET, spot.owner(), number(text, Labels.size(text), spot.middle(), y));
        head.head()
                .note()
                .arrival()
                .filter(arrival -> arrival.graceFret().isPresent())
                .ifPresent(arrival -> {
                    String grace = Labels.graceText(arrival);
                    double size = Labels.size(grace) * Labels.GRACE;
                    double x = spot.middle()
                            - Labels.width(text) / 2
                            - Labels.graceGap(arrival)
                            - Labels.graceWidth(arrival) / 2;
                    sketch.tab().add(Kind.FRET, spot.owner(), number(grace, size, x, y));
                });
    }

    /** Centred on a string by the height of its figures. */
    static Run number(String text, double size, double x, double string) {
        double height = -TextFont.of(Face.MEDIUM).box("0").top() * size;
        return new Run(text, Face.MEDIUM, size, new Point(x, string + height / 2), Align.MIDDLE);
    }

    /** Whether a system begins with a head that a tie leads to, whose number is then repeated in parentheses. */
    public static boolean isEntering(Spot spot, Head head) {
        var columns = spot.span().bar().columns();
        return head.tiedFrom() && spot.span().first() && spot.column() == columns.get(0);
    }

    /** What is printed on the string where a head stands; empty for nothing. */
    public static String printed(Spot spot, Head head) {
        return Labels.isShown(head) ? Labels.text(head) : isEntering(spot, head) ? "(" + Labels.fret(head) + ")" : "";
    }
}
