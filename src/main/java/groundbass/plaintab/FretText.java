package groundbass.plaintab;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Place;
import java.util.OptionalInt;

/** What stands on a string for one note: how the hand comes to it, the fret, and how it leaves (common practice, no source). */
final class FretText {
    private FretText() {}

    /** @param source the fret of the note before it on its string, which tells which way a slide goes */
    static String of(Note note, OptionalInt source) {
        if (!(note.place() instanceof Place.Fretted fretted)) {
            return "x";
        }
        return before(note, source, fretted.fret()) + fret(note, fretted.fret()) + after(note);
    }

    private static String before(Note note, OptionalInt source, int fret) {
        String slide = note.ornaments()
                .slideIn()
                .map(in -> in == SlideIn.BELOW ? "/" : "\\")
                .orElse("");
        return note.arrival().map(arrival -> arrived(arrival, source, fret)).orElse("") + slide;
    }

    private static String arrived(Arrival arrival, OptionalInt source, int fret) {
        var from = arrival.isGrace() ? arrival.graceFret() : source;
        String grace = arrival.isGrace() ? String.valueOf(arrival.graceFret().orElseThrow()) : "";
        return grace
                + switch (arrival.kind()) {
                    case HAMMER -> "h";
                    case PULL -> "p";
                    case SLIDE -> from.orElse(0) <= fret ? "/" : "\\";
                };
    }

    private static String fret(Note note, int fret) {
        var harmonic = note.ornaments().harmonic();
        if (harmonic.isPresent()) {
            var touched = harmonic.get().touchedFret();
            return touched.isPresent() ? fret + "<" + touched.getAsInt() + ">" : "<" + fret + ">";
        }
        return note.has(Mark.GHOST) ? "(" + fret + ")" : String.valueOf(fret);
    }

    private static String after(Note note) {
        String bend = note.ornaments()
                .bend()
                .map(each -> (each.before() ? "pb" : "b") + amount(each) + (each.released() ? "r" : ""))
                .orElse("");
        String trill = note.place() instanceof Place.Fretted fretted
                ? note.ornaments()
                        .trill()
                        .map(each -> "tr" + (fretted.fret() + each.frets()))
                        .orElse("")
                : "";
        String wave = note.has(Mark.VIBRATO) ? "~" : "";
        String slide = note.ornaments()
                .slideOff()
                .map(off -> off == SlideOff.UP ? "/" : "\\")
                .orElse("");
        return bend + trill + wave + slide;
    }

    /** In whole tones; one goes without saying. */
    private static String amount(Bend bend) {
        var tones = Fraction.of(bend.quarters(), 4);
        return tones.equals(Fraction.ONE) ? "" : tones.toString();
    }
}
