package groundbass.engraving.spacing;

import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.TextFont;
import groundbass.score.Arrival;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Place;
import groundbass.writing.Head;
import java.util.List;

/**
 * What is printed on a string for a head: a fret, a cross, a harmonic in angle brackets, the upper note of a trill in brackets, or
 * nothing where a tie goes on.
 */
public final class Labels {
    /** rule: tab-figures. */
    static final double SIZE = 2.05;

    private static final double LONG_SIZE = 1.8;

    private Labels() {}

    public static boolean isShown(Head head) {
        return !head.tiedFrom();
    }

    public static String text(Head head) {
        var note = head.note();
        if (!(note.place() instanceof Place.Fretted fretted)) {
            return "X";
        }
        String fret = Integer.toString(fretted.fret());
        if (note.ornaments().harmonic().isPresent()) {
            var touched = note.ornaments().harmonic().get().touchedFret();
            return touched.isPresent() ? fret + "<" + touched.getAsInt() + ">" : "<" + fret + ">";
        }
        String trilled = note.ornaments()
                .trill()
                .map(trill -> "(" + (fretted.fret() + trill.frets()) + ")")
                .orElse("");
        return (Heads.isGhost(head) ? "(" + fret + ")" : fret) + trilled;
    }

    public static double size(String text) {
        return text.length() > 1 ? LONG_SIZE : SIZE;
    }

    public static double width(String text) {
        return TextFont.of(Face.MEDIUM).width(text) * size(text);
    }

    /** How far the widest label of a column reaches from the middle. */
    public static double reach(List<Cell> cells) {
        return cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .filter(head -> isShown(head.head()))
                .mapToDouble(head -> width(text(head.head())) / 2)
                .max()
                .orElse(0);
    }

    /** How far a grace note's number reaches to the left of the widest label. */
    public static double graceReach(List<Cell> cells) {
        return cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .filter(head -> isShown(head.head()))
                .flatMap(head -> head.head().note().arrival().stream())
                .filter(Arrival::isGrace)
                .mapToDouble(arrival -> graceWidth(arrival) + graceGap(arrival))
                .max()
                .orElse(0);
    }

    /** What stands to the left of the widest label: a sign of the chord, and what it stands before. */
    static double leftRoom(List<Cell> cells) {
        return leftOfLabel(cells) + (Heads.spread(cells).isPresent() ? Columns.SPREAD_ROOM : 0);
    }

    /** A grace note's number, or a slide into it. */
    public static double leftOfLabel(List<Cell> cells) {
        boolean slide = cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .anyMatch(head -> isShown(head.head())
                        && head.head().note().ornaments().slideIn().isPresent());
        return graceReach(cells) + (slide ? SLIDE_ROOM : 0);
    }

    /** What stands to the right of the widest label: a slide out of it, or the arrows of bends. */
    static double rightRoom(List<Cell> cells) {
        var heads = cells.stream()
                .flatMap(cell -> cell.heads().stream())
                .map(HeadPlace::head)
                .toList();
        var bent = heads.stream()
                .filter(Labels::isShown)
                .flatMap(head -> head.note().ornaments().bend().stream())
                .toList();
        long bends = bent.size();
        long released = bent.stream().filter(Bend::released).count();
        boolean needed = bends > 0
                || heads.stream()
                        .anyMatch(head -> head.note().ornaments().slideOff().isPresent());
        return (needed ? SLIDE_ROOM : 0) + Math.max(0, bends - 1) * BENDS_APART + released * RELEASE;
    }

    /** Between the arrow of a bend and that of its release. */
    public static final double RELEASE = 1.2;

    /** Between the arrows of bends at one moment. */
    public static final double BENDS_APART = 1.9;

    private static final double SLIDE_ROOM = 1.5;

    private static final double GRACE_GAP = 0.7;
    private static final double GRACE_SLIDE = 1.5;

    /** Between a grace note's number and its note's, where a slide has its line. */
    public static double graceGap(Arrival arrival) {
        return arrival.kind() == Arrival.Kind.SLIDE ? GRACE_SLIDE : GRACE_GAP;
    }

    public static int fret(Head head) {
        return head.note().place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
    }

    public static double graceWidth(Arrival arrival) {
        return width(graceText(arrival)) * GRACE;
    }

    public static String graceText(Arrival arrival) {
        return Integer.toString(arrival.graceFret().orElse(0));
    }

    public static final double GRACE = 0.75;
}
