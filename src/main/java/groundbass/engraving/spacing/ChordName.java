package groundbass.engraving.spacing;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.Shape.Run;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;

/** A chord name as it is set: signs from the music font, what follows the root and its mode raised and smaller. */
public final class ChordName {
    private static final double SIZE = 2.6;
    private static final double RAISED_SIZE = 1.9;
    private static final double RAISE = 0.7;

    /** Scales of signs for letters of size 1, so that both are as high as a capital. */
    private static final double SHARP = 0.24;

    private static final double FLAT = 0.27;

    private final List<Shape> shapes = new ArrayList<>();
    private double x;

    private ChordName() {}

    /** Shapes on a baseline of height zero, beginning at zero. */
    static List<Shape> shapes(ChordSymbol symbol) {
        var name = new ChordName();
        if (symbol instanceof Chord chord) {
            name.note(chord.root());
            name.suffix(chord.quality().suffix());
            chord.bass().ifPresent(bass -> {
                name.text("/", SIZE, 0);
                name.note(bass);
            });
        } else {
            name.text(symbol.toString(), SIZE * 0.85, 0);
        }
        return name.shapes;
    }

    /** The same as one word, with the accidentals that Unicode has (U+266D and U+266F). */
    public static Shape.Word word(ChordSymbol symbol) {
        return new Shape.Word(spelled(symbol), shapes(symbol));
    }

    private static String spelled(ChordSymbol symbol) {
        if (!(symbol instanceof Chord chord)) {
            return symbol.toString();
        }
        String suffix = chord.quality().suffix().replace('b', '♭').replace('#', '♯');
        return spelled(chord.root())
                + suffix
                + chord.bass().map(bass -> "/" + spelled(bass)).orElse("");
    }

    private static String spelled(NoteName note) {
        return note.letter().name() + (note.alteration() < 0 ? "♭" : "♯").repeat(Math.abs(note.alteration()));
    }

    public static double width(ChordSymbol symbol) {
        return shapes(symbol).stream()
                .mapToDouble(shape -> shape.box().right())
                .max()
                .orElse(0);
    }

    private void note(NoteName note) {
        text(note.letter().name(), SIZE, 0);
        for (int i = 0; i < Math.abs(note.alteration()); i++) {
            sign(note.alteration() < 0, SIZE, 0);
        }
    }

    /** The minor sign stays on the line; all else is raised. */
    private void suffix(String suffix) {
        boolean minor = suffix.startsWith("m") && !suffix.startsWith("maj");
        if (minor) {
            text("m", SIZE * 0.85, 0);
        }
        var run = new StringBuilder();
        for (char c : suffix.substring(minor ? 1 : 0).toCharArray()) {
            if (c == 'b' || c == '#') {
                flush(run);
                sign(c == 'b', RAISED_SIZE, RAISE);
            } else {
                run.append(c);
            }
        }
        flush(run);
    }

    private void flush(StringBuilder run) {
        if (!run.isEmpty()) {
            text(run.toString(), RAISED_SIZE, RAISE);
            run.setLength(0);
        }
    }

    private void text(String text, double size, double raise) {
        var run = new Run(text, Face.MEDIUM, size, new Point(x, -raise), Align.START);
        shapes.add(run);
        x += run.width();
    }

    /** From the baseline to the height of a capital. */
    private void sign(boolean flat, double size, double raise) {
        var glyph = flat ? Glyph.FLAT : Glyph.SHARP;
        double scale = (flat ? FLAT : SHARP) * size;
        var box = MusicFont.bravura().box(glyph);
        x += 0.12;
        shapes.add(new Shape.Sign(glyph, new Point(x, -raise - box.bottom() * scale), scale));
        x += box.right() * scale + 0.1;
    }
}
