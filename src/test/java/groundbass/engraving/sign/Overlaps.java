package groundbass.engraving.sign;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/** Finds marks that lie on one another and should not. */
public final class Overlaps {
    private static final double TOUCHING = 0.03;

    /** What must stay clear of everything of its own sort and of text. Lines, stems, beams and curves may be crossed. */
    private static final Set<Kind> SOLID = EnumSet.of(
            Kind.CLEF,
            Kind.KEY,
            Kind.TIME,
            Kind.HEAD,
            Kind.PARENTHESIS,
            Kind.REST,
            Kind.DOT,
            Kind.ACCIDENTAL,
            Kind.ARTICULATION,
            Kind.TUPLET,
            Kind.FRET,
            Kind.SPREAD,
            Kind.BARLINE,
            Kind.REPEAT_DOT,
            Kind.SIMILE);

    /** What must be clear of everything but the lines of a staff, since it is read. */
    private static final Set<Kind> READ = EnumSet.of(
            Kind.SLUR_LETTER,
            Kind.DYNAMIC,
            Kind.JUMP,
            Kind.WORDS,
            Kind.FRET,
            Kind.TECHNIQUE,
            Kind.FINGER,
            Kind.CHORD_NAME,
            Kind.SECTION,
            Kind.TEMPO,
            Kind.FEEL,
            Kind.BAR_NUMBER,
            Kind.RING,
            Kind.OTTAVA,
            Kind.VIBRATO,
            Kind.TRILL,
            Kind.TEXT);

    private static final Set<Kind> IN_THE_WAY_OF_TEXT = EnumSet.of(
            Kind.STEM,
            Kind.BEAM,
            Kind.FLAG,
            Kind.LEDGER,
            Kind.BARLINE,
            Kind.TIE,
            Kind.SLUR,
            Kind.SLIDE,
            Kind.BEND,
            Kind.SPREAD,
            Kind.HAIRPIN,
            Kind.ENDING);

    /** What must not run through a head, a rest, a dot or a sign before a head. */
    private static final Set<Kind> LINES =
            EnumSet.of(Kind.BEAM, Kind.FLAG, Kind.TIE, Kind.SLUR, Kind.BEND, Kind.HAIRPIN, Kind.ENDING);

    private static final Set<Kind> NOT_CROSSED =
            EnumSet.of(Kind.HEAD, Kind.REST, Kind.DOT, Kind.ACCIDENTAL, Kind.ARTICULATION, Kind.FRET, Kind.TUPLET);

    private Overlaps() {}

    public static List<String> in(Page page) {
        var found = new ArrayList<String>();
        var marks = page.marks().stream()
                .filter(mark -> mark.kind() != Kind.STAFF_LINE)
                .map(Outline::of)
                .sorted(Comparator.comparingDouble(outline -> outline.box().left()))
                .toList();
        for (int i = 0; i < marks.size(); i++) {
            var a = marks.get(i);
            for (int k = i + 1;
                    k < marks.size() && marks.get(k).box().left() < a.box().right();
                    k++) {
                var b = marks.get(k);
                if (mustBeApart(a.mark(), b.mark()) && a.touches(b, TOUCHING)) {
                    found.add(a.mark() + "\n  on " + b.mark());
                }
            }
        }
        return found;
    }

    private static boolean mustBeApart(Mark a, Mark b) {
        boolean oneThing = a.kind() == b.kind() && a.owner().equals(b.owner());
        if (oneThing || isShared(a, b) || isFlagOfHead(a, b)) {
            return false;
        }
        boolean solid = SOLID.contains(a.kind()) && SOLID.contains(b.kind());
        return solid || isRead(a, b) || isRead(b, a) || isCrossed(a, b) || isCrossed(b, a);
    }

    private static boolean isRead(Mark text, Mark other) {
        return READ.contains(text.kind())
                && (READ.contains(other.kind())
                        || SOLID.contains(other.kind())
                        || IN_THE_WAY_OF_TEXT.contains(other.kind()));
    }

    private static boolean isCrossed(Mark line, Mark solid) {
        return LINES.contains(line.kind()) && NOT_CROSSED.contains(solid.kind());
    }

    /** A flag hangs from the stem beside its own head. */
    private static boolean isFlagOfHead(Mark a, Mark b) {
        var kinds = EnumSet.of(a.kind(), b.kind());
        return kinds.equals(EnumSet.of(Kind.FLAG, Kind.HEAD)) && a.owner().equals(b.owner());
    }

    /** Two voices may share a head, and a dot. */
    private static boolean isShared(Mark a, Mark b) {
        return a.kind() == b.kind()
                && (a.kind() == Kind.HEAD || a.kind() == Kind.DOT)
                && Math.abs(a.box().left() - b.box().left()) < 0.01
                && Math.abs(a.box().top() - b.box().top()) < 0.01;
    }
}
