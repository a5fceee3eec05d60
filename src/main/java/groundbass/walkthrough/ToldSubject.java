package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Harmonic;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;

/** What a step tells, as text that is the same wherever the step stands. It is digested and kept, so it must not change. */
final class ToldSubject {
    static final String OPENING = "opening";
    static final String CLOSING = "closing";

    private ToldSubject() {}

    /** @param notes those that begin in the stretch, in the order of the bar */
    static String notes(String kind, Fraction from, Fraction to, List<Note> notes) {
        return kind + " " + to.minus(from) + " "
                + notes.stream().map(note -> note(note, from)).collect(Collectors.joining(" | "));
    }

    private static String note(Note note, Fraction from) {
        String place = note.place() instanceof Fretted fretted ? String.valueOf(fretted.fret()) : "x";
        return String.join(
                " ",
                note.onset().minus(from).toString(),
                note.length().toString(),
                note.string() + ":" + place,
                note.pluck().map(Technique::word).orElse("-"),
                note.arrival().map(ToldSubject::arrival).orElse("-"),
                ornaments(note.ornaments()));
    }

    private static String arrival(Arrival arrival) {
        return arrival.kind().word() + arrival.graceFret();
    }

    private static String bend(Bend bend) {
        return (bend.before() ? "prebend" : "bend") + bend.quarters() + (bend.released() ? "release" : "");
    }

    private static String ornaments(Ornaments ornaments) {
        String marks = Arrays.stream(Mark.values())
                .filter(ornaments::has)
                .map(Mark::word)
                .collect(Collectors.joining(","));
        String trill = ornaments.trill().map(each -> " trill" + each.frets()).orElse("");
        return String.join(
                        " ",
                        marks,
                        ornaments.bend().map(ToldSubject::bend).orElse(""),
                        ornaments
                                .harmonic()
                                .map(Harmonic::touchedFret)
                                .map(fret -> "harmonic" + fret)
                                .orElse(""),
                        ornaments.slideIn().map(Enum::name).orElse(""),
                        ornaments.slideOff().map(Enum::name).orElse(""),
                        ornaments.finger().toString(),
                        ornaments.spelling().map(Object::toString).orElse(""))
                + trill
                + ornaments.spread().map(each -> " " + each.words()).orElse("");
    }
}
