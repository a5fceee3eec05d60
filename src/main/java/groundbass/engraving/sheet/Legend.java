package groundbass.engraving.sheet;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import groundbass.engraving.options.SheetOptions;
import groundbass.engraving.options.Sign;
import groundbass.engraving.sign.around.Figures;
import groundbass.engraving.sign.curve.Bends;
import groundbass.engraving.sign.staff.Spreads;
import groundbass.engraving.spacing.TechniqueMarks;
import groundbass.score.Arrival;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The signs that a sheet uses, each with its meaning in words, set in lines. The origin is the left margin. */
final class Legend {
    private static final double SIZE = 1.75;
    private static final double TO_MEANING = 0.7;
    private static final double BETWEEN = 2.5;
    private static final double LINE = 2.6;

    private final SheetOptions options;
    private final Map<Sign, Entry> entries = new EnumMap<>(Sign.class);

    Legend(SheetOptions options) {
        this.options = options;
    }

    /**
     * A sign at the left margin, on a baseline of height zero, and its meaning.
     *
     * @param width of the sign
     * @param whole width of both
     */
    private record Entry(Shape.Word sign, double width, String meaning, double whole) {
        Page.Part at(double x, double y) {
            var right = new Point(x + width + TO_MEANING, y);
            var words = new Shape.Run(meaning, Face.REGULAR, SIZE, right, Align.START);
            var marks = List.of(Mark.free(Kind.TEXT, sign.moved(x, y)), Mark.free(Kind.TEXT, words));
            var box = new Box(x, y - LINE + 1, x + whole, y + 1);
            return new Page.Part(new Group(Role.ITEM, Optional.empty(), box), marks);
        }
    }

    List<Page.Part> parts(Set<Sign> used) {
        var parts = new ArrayList<Page.Part>();
        double x = 0;
        double y = LINE;
        for (var sign : used.stream().sorted().toList()) {
            var entry = entries.computeIfAbsent(sign, this::entry);
            if (x > 0 && x + entry.whole() > options.paper().room()) {
                x = 0;
                y += LINE;
            }
            parts.add(entry.at(x, y));
            x += entry.whole() + BETWEEN;
        }
        return parts;
    }

    private Entry entry(Sign sign) {
        var sample = sample(sign);
        double width =
                sample.stream().mapToDouble(shape -> shape.box().right()).max().orElse(0);
        String meaning = options.words().meaning(sign);
        double whole = width + TO_MEANING + TextFont.of(Face.REGULAR).width(meaning) * SIZE;
        return new Entry(new Shape.Word(spelled(sample), sample), width, meaning, whole);
    }

    /** A drawn sign says nothing that its meaning does not say. */
    private static String spelled(List<Shape> sample) {
        return sample.get(0) instanceof Shape.Run run ? run.text() + " " : "";
    }

    private List<Shape> sample(Sign sign) {
        return switch (sign) {
            case SLAP -> letter(Technique.SLAP);
            case POP -> letter(Technique.POP);
            case THUMB -> letter(Technique.THUMB);
            case FINGER -> letter(Technique.FINGER);
            case INDEX -> letter(Technique.INDEX);
            case MIDDLE -> letter(Technique.MIDDLE);
            case THUMB_DOWN -> letter(Technique.THUMB_DOWN);
            case THUMB_UP -> letter(Technique.THUMB_UP);
            case PICK -> letter(Technique.PICK);
            case PLUCK -> letter(Technique.PLUCK);
            case TAP -> letter(Technique.TAP);
            case MUTE -> letter(Technique.MUTE);
            case RAKE -> letter(Technique.RAKE);
            case LEFT_HAND -> letter(Technique.LEFT_HAND);
            case HAMMER -> arrival(Arrival.Kind.HAMMER);
            case PULL -> arrival(Arrival.Kind.PULL);
            case SLIDE -> arrival(Arrival.Kind.SLIDE);
            case SLIDE_IN -> List.of(new Shape.Stroke(new Point(0, -0.1), new Point(1.1, -0.9), 0.16));
            case SLIDE_OFF -> List.of(new Shape.Stroke(new Point(0, -0.9), new Point(1.1, -0.1), 0.16));
            case DEAD -> glyph(Glyph.X_BLACK, 0.5);
            case GHOST -> text("( )", Face.REGULAR);
            case HARMONIC -> glyph(Glyph.DIAMOND_BLACK, 0.5);
            case SHORT -> glyph(Glyph.STACCATO_ABOVE, 0.4);
            case TENUTO -> glyph(Glyph.TENUTO_ABOVE, 0.5);
            case MARCATO -> glyph(Glyph.MARCATO_ABOVE, 0);
            case ACCENT -> glyph(Glyph.ACCENT_ABOVE, 0.1);
            case FERMATA -> glyph(Glyph.FERMATA, 0);
            case VIBRATO -> glyph(Glyph.VIBRATO, 0.3);
            case TRILL -> glyph(Glyph.TRILL, 0);
            case BEND -> text("½", Face.MEDIUM);
            case PREBEND -> Bends.sample(true);
            case RELEASE -> Bends.sample(false);
            case ROLL -> Spreads.sample(Spread.ROLL);
            case ROLL_DOWN -> Spreads.sample(Spread.ROLL_DOWN);
            case BRACKET -> Spreads.sample(Spread.BRACKET);
            case RING -> text(options.words().ring(), Face.ITALIC);
            case FRETTING_FINGER -> text("1 2 3 4", Face.ITALIC);
            case DEGREE -> List.of(Figures.word("b7"));
        };
    }

    private List<Shape> letter(Technique technique) {
        return TechniqueMarks.shapes(options.letters().of(technique));
    }

    private List<Shape> arrival(Arrival.Kind kind) {
        return text(options.letters().of(kind), Face.ITALIC);
    }

    private static List<Shape> text(String text, Face face) {
        return List.of(new Shape.Run(text, face, SIZE, new Point(0, 0), Align.START));
    }

    private static List<Shape> glyph(Glyph glyph, double raise) {
        return List.of(new Shape.Sign(glyph, new Point(0, -raise), 1));
    }
}
