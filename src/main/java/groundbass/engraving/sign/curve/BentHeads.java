package groundbass.engraving.sign.curve;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Heads;
import groundbass.engraving.spacing.Labels;
import groundbass.engraving.spacing.Positions;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.theory.Spelling;
import groundbass.writing.Head;

/**
 * What a bend sounds, on a notation staff over a tablature: a curve to a small head in parentheses (rule:
 * bend-in-staff). Its size is said once, on the tablature; a bend by a quarter tone has no head.
 */
public final class BentHeads implements Concern {
    private static final double SCALE = Measures.GRACE_SCALE;
    private static final double FROM_HEAD = 0.4;
    private static final double BETWEEN = 0.08;
    private static final double OFF_HEAD = 0.85;
    private static final double OFF_SMALL = 0.75;

    @Override
    public void draw(Sketch sketch) {
        if (sketch.options().staves() != Staves.BOTH) {
            return;
        }
        for (var spot : sketch.spots()) {
            double left = spot.x() + Math.max(Bends.inked(spot), flag(spot)) + FROM_HEAD;
            for (var head : spot.cell().heads()) {
                if (Labels.isShown(head.head()) && Heads.hasBentHead(head.head())) {
                    left = draw(sketch, spot, head, left) + FROM_HEAD;
                }
            }
        }
    }

    /** How far a flag reaches that hangs down beside its head. */
    private static double flag(Spot spot) {
        return spot.cell().flags() > 0 && spot.cell().up()
                ? spot.cell().stemDx()
                        + MusicFont.bravura().width(Glyph.flag(spot.cell().flags(), true))
                : 0;
    }

    /** The right edge of what is drawn. */
    private static double draw(Sketch sketch, Spot spot, HeadPlace head, double left) {
        var written = sketch.written(spot.span());
        var key = written.inForce().key();
        var pitch = bent(head.head(), key);
        int position = Positions.sounding(pitch) - (spot.column().raised() ? Positions.OCTAVE : 0);
        double x = add(sketch, spot, Glyph.PARENTHESIS_LEFT, left, position);
        if (needsSign(spot, pitch.name(), key)) {
            // an accidental, which the curve keeps clear of
            x = add(sketch, spot, Kind.ACCIDENTAL, sign(pitch.name()), x, position);
        }
        double middle = x + Graces.headWidth() / 2;
        x = add(sketch, spot, Glyph.HEAD_BLACK, x, position);
        double right = add(sketch, spot, Glyph.PARENTHESIS_RIGHT, x, position);
        boolean above = spot.cell().heads().size() > 1
                ? head.position() == spot.cell().highest()
                : !spot.cell().up();
        int out = above ? -1 : 1;
        var from = new Point(spot.middle(), head.y() + out * OFF_HEAD);
        var to = new Point(middle, Measures.y(position) + out * OFF_SMALL);
        var bend = head.head().note().ornaments().bend().orElseThrow();
        if (!bend.before()) {
            curve(sketch, spot, from, to, above);
        }
        return bend.released() ? back(sketch, spot, head, to, right, above) : right;
    }

    /** To the pitch of its fret again, whose sign holds. */
    private static double back(Sketch sketch, Spot spot, HeadPlace head, Point from, double left, boolean above) {
        double x = add(sketch, spot, Glyph.PARENTHESIS_LEFT, left + FROM_HEAD, head.position());
        double middle = x + Graces.headWidth() / 2;
        x = add(sketch, spot, Glyph.HEAD_BLACK, x, head.position());
        double right = add(sketch, spot, Glyph.PARENTHESIS_RIGHT, x, head.position());
        curve(sketch, spot, from, new Point(middle, head.y() + (above ? -1 : 1) * OFF_SMALL), above);
        return right;
    }

    private static void curve(Sketch sketch, Spot spot, Point from, Point to, boolean above) {
        var curve = Arches.near(sketch.notation(), from, to, above)
                .orElseGet(() -> Arches.overHeads(sketch.notation(), from, to, above));
        sketch.notation().add(Kind.BEND, spot.owner(), curve);
    }

    private static double add(Sketch sketch, Spot spot, Glyph glyph, double left, int position) {
        return add(sketch, spot, Kind.BEND, glyph, left, position);
    }

    private static double add(Sketch sketch, Spot spot, Kind kind, Glyph glyph, double left, int position) {
        var box = MusicFont.bravura().box(glyph);
        var at = new Point(left - box.left() * SCALE, Measures.y(position));
        sketch.notation().add(kind, spot.owner(), new Shape.Sign(glyph, at, SCALE));
        return left + box.width() * SCALE + BETWEEN;
    }

    /** A second, or a third where it is bent farther. */
    private static Pitch bent(Head head, Key key) {
        int semitones = head.note().ornaments().bend().orElseThrow().quarters() / 2;
        int midi = head.pitch().midi() + semitones;
        var letter = head.pitch().name().letter().plus(semitones > 2 ? 2 : 1);
        int alteration = Math.floorMod(midi - letter.semitones() + 6, 12) - 6;
        return Math.abs(alteration) > 1
                ? Spelling.of(key, midi, midi - 1)
                : Pitch.sounding(new NoteName(letter, alteration), midi);
    }

    /** Whatever the bar has said of this letter, the small head says it anew. */
    private static boolean needsSign(Spot spot, NoteName name, Key key) {
        return name.alteration() != key.alterationOf(name.letter())
                || spot.span().bar().columns().stream()
                        .flatMap(column -> column.cells().stream())
                        .flatMap(cell -> cell.heads().stream())
                        .map(head -> head.head().pitch().name())
                        .anyMatch(other -> other.letter() == name.letter() && !other.equals(name));
    }

    private static Glyph sign(NoteName name) {
        return name.alteration() < 0 ? Glyph.FLAT : name.alteration() > 0 ? Glyph.SHARP : Glyph.NATURAL;
    }
}
