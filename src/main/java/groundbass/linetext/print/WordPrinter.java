package groundbass.linetext.print;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Writes the words that follow a place, each with a space before it. */
final class WordPrinter {
    private WordPrinter() {}

    static String words(Note note, Technique style) {
        var words = new ArrayList<String>();
        boolean usual = note.arrival().filter(arrival -> !arrival.isGrace()).isEmpty();
        note.pluck()
                .filter(technique -> !usual || technique != style)
                .ifPresent(technique -> words.add(technique.word()));
        note.arrival().ifPresent(arrival -> {
            words.add(arrival.kind().word());
            arrival.graceFret().ifPresent(fret -> words.add("from " + fret));
        });
        ornaments(note.ornaments(), words);
        if (note.place() instanceof Fretted fretted) {
            note.ornaments().trill().ifPresent(trill -> words.add("trill to " + (fretted.fret() + trill.frets())));
        }
        return words.isEmpty() ? "" : " " + String.join(" ", words);
    }

    private static void ornaments(Ornaments ornaments, List<String> words) {
        ornaments.slideIn().ifPresent(from -> words.add("slide in " + (from == SlideIn.BELOW ? "below" : "above")));
        ornaments.slideOff().ifPresent(to -> words.add("slide off " + (to == SlideOff.DOWN ? "down" : "up")));
        ornaments.bend().ifPresent(bend -> {
            words.add((bend.before() ? "prebend " : "bend ") + amount(bend));
            if (bend.released()) {
                words.add("release");
            }
        });
        ornaments.harmonic().ifPresent(harmonic -> {
            words.add("harmonic");
            harmonic.touchedFret().ifPresent(fret -> words.add("at " + fret));
        });
        Arrays.stream(Mark.values()).filter(ornaments::has).forEach(mark -> words.add(mark.word()));
        ornaments.finger().ifPresent(finger -> words.add("with " + finger));
        ornaments.spelling().ifPresent(name -> words.add("as " + name));
    }

    /** In whole tones: {@code 1/2}, {@code 1}, {@code 1 1/4}. */
    private static String amount(Bend bend) {
        var tones = Fraction.of(bend.quarters(), 4);
        var part = tones.modulo(Fraction.ONE);
        if (part.isZero() || tones.isBefore(Fraction.ONE)) {
            return tones.toString();
        }
        return tones.floor() + " " + part;
    }
}
