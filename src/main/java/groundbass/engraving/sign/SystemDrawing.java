package groundbass.engraving.sign;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.Staves;
import groundbass.engraving.sign.around.BarNumbers;
import groundbass.engraving.sign.around.ChordNames;
import groundbass.engraving.sign.around.CountRow;
import groundbass.engraving.sign.around.Dynamics;
import groundbass.engraving.sign.around.Endings;
import groundbass.engraving.sign.around.Figures;
import groundbass.engraving.sign.around.Fingers;
import groundbass.engraving.sign.around.Jumps;
import groundbass.engraving.sign.around.LetterRows;
import groundbass.engraving.sign.around.Openings;
import groundbass.engraving.sign.around.OttavaSigns;
import groundbass.engraving.sign.around.Rings;
import groundbass.engraving.sign.around.Trills;
import groundbass.engraving.sign.around.Vibratos;
import groundbass.engraving.sign.around.WordsAbove;
import groundbass.engraving.sign.curve.Bends;
import groundbass.engraving.sign.curve.BentHeads;
import groundbass.engraving.sign.curve.GraceSlurs;
import groundbass.engraving.sign.curve.Graces;
import groundbass.engraving.sign.curve.SlideEnds;
import groundbass.engraving.sign.curve.Slides;
import groundbass.engraving.sign.curve.SlurLetters;
import groundbass.engraving.sign.curve.Slurs;
import groundbass.engraving.sign.curve.Ties;
import groundbass.engraving.sign.staff.Accents;
import groundbass.engraving.sign.staff.Articulations;
import groundbass.engraving.sign.staff.Barlines;
import groundbass.engraving.sign.staff.Beams;
import groundbass.engraving.sign.staff.Clefs;
import groundbass.engraving.sign.staff.Fermatas;
import groundbass.engraving.sign.staff.LongRestSigns;
import groundbass.engraving.sign.staff.NoteMarks;
import groundbass.engraving.sign.staff.Rests;
import groundbass.engraving.sign.staff.Similes;
import groundbass.engraving.sign.staff.Spreads;
import groundbass.engraving.sign.staff.StaffLines;
import groundbass.engraving.sign.staff.StemMarks;
import groundbass.engraving.sign.staff.TabLines;
import groundbass.engraving.sign.staff.TabNumbers;
import groundbass.engraving.sign.staff.TabRhythm;
import groundbass.engraving.sign.staff.Tuplets;
import groundbass.engraving.sketch.Concern;
import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.spacing.BarSpan;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Draws one system: every concern in turn, then the staves put together. */
public final class SystemDrawing {
    /** rule: staves-apart. */
    private static final double STAVES_APART = 5;

    private static final double CLEAR = 0.7;

    /** What stands on both staves and must be there before anything is stacked outward. */
    private static final List<Concern> FIRST = List.of(new Graces(), new Spreads());

    private static final List<Concern> NOTATION = List.of(
            new StaffLines(),
            new NoteMarks(),
            new Beams(),
            new StemMarks(),
            new Rests(),
            new Articulations(),
            new BentHeads(), // before ties and slurs, which keep clear of them
            new Ties());

    private static final List<Concern> TAB = List.of(new TabNumbers(), new TabLines());

    private static final List<Concern> TAB_ALONE = List.of(new TabRhythm(), new Articulations());

    /** From the staff outward. */
    private static final List<Concern> AROUND = List.of(
            new Clefs(),
            new Similes(),
            new LongRestSigns(),
            new SlideEnds(),
            new Slides(),
            new GraceSlurs(),
            new Slurs(),
            new SlurLetters(),
            new Tuplets(),
            new Accents(),
            new Fermatas(),
            new Trills(),
            new Vibratos(),
            new Rings(),
            new OttavaSigns(),
            new Dynamics(),
            new LetterRows(),
            new Fingers(),
            new Figures(),
            new CountRow(),
            new BarNumbers(),
            new ChordNames(),
            new WordsAbove(),
            new Endings(),
            new Jumps(),
            new Openings());

    private SystemDrawing() {}

    /** A system whose first staff line is at height zero. */
    public static Page.Part draw(Sketch sketch) {
        var staves = sketch.options().staves();
        FIRST.forEach(concern -> concern.draw(sketch));
        if (staves.hasNotation()) {
            NOTATION.forEach(concern -> concern.draw(sketch));
        }
        if (staves.hasTab()) {
            TAB.forEach(concern -> concern.draw(sketch));
        }
        new Bends().draw(sketch);
        if (staves == Staves.TAB_ONLY) {
            TAB_ALONE.forEach(concern -> concern.draw(sketch));
        }
        AROUND.forEach(concern -> concern.draw(sketch));
        double tabTop = staves == Staves.BOTH ? tabTop(sketch) : 0;
        var marks = new ArrayList<Mark>();
        if (staves.hasNotation()) {
            marks.addAll(sketch.notation().marks());
        }
        if (staves.hasTab()) {
            sketch.tab().marks().forEach(mark -> marks.add(mark.moved(0, tabTop)));
        }
        marks.addAll(new Barlines(sketch, tabTop).marks());
        var box = marks.stream().map(Mark::box).reduce(Box::union).orElseThrow();
        var bars = sketch.plan().bars().stream().map(BarSpan::place).toList();
        return new Page.Part(new Group(Role.SYSTEM, Optional.of(sketch.plan().passage()), box), marks, bars);
    }

    private static double tabTop(Sketch sketch) {
        double needed = sketch.notation().below().facing(sketch.tab().above()) + CLEAR;
        return Math.max(needed, Measures.STAFF_HEIGHT + STAVES_APART);
    }
}
