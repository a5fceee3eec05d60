package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.writing.BeamGroup.Part;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Short ways to say what is played and to see what is written. */
final class Rhythms {
    /** Where the notes of {@link #bar} are played, and a note that sounds above it. */
    static final Place A3 = Place.of(3, 3);

    static final Place G5 = Place.of(1, 5);

    private static final Map<Part, String> PARTS = Map.of(
            Part.BEGIN, "b",
            Part.CONTINUE, "c",
            Part.END, "e",
            Part.FORWARD_HOOK, ">",
            Part.BACKWARD_HOOK, "<");

    private Rhythms() {}

    static Fraction time(String text) {
        var figures = text.split("/");
        return Fraction.of(Long.parseLong(figures[0]), figures.length > 1 ? Long.parseLong(figures[1]) : 1);
    }

    static Note note(String onset, String length, Place place) {
        return Note.plucked(time(onset), time(length), place, Technique.FINGER);
    }

    /** One after another from the start of the bar: {@code 1/4 r1/8 1/8}; {@code 1/16x4} is four. */
    static List<Note> notes(String text) {
        var notes = new ArrayList<Note>();
        var at = Fraction.ZERO;
        for (String word : text.split(" ")) {
            var times = word.split("x");
            var length = time(times[0].replace("r", ""));
            for (int i = 0; i < (times.length > 1 ? Integer.parseInt(times[1]) : 1); i++) {
                if (!word.startsWith("r")) {
                    notes.add(Note.plucked(at, length, A3, Technique.FINGER));
                }
                at = at.plus(length);
            }
        }
        return notes;
    }

    static Header header(Meter meter) {
        return Header.PLAIN.with(meter);
    }

    static Header header(String tonic, Mode mode) {
        return Header.PLAIN.with(new Key(NoteName.parse(tonic).orElseThrow(), mode));
    }

    static WrittenBar bar(Meter meter, List<Note> notes) {
        return Writing.of(new Line(header(meter), List.of(Bar.of(meter, notes))))
                .bars()
                .get(0);
    }

    static Voice voice(Meter meter, String text) {
        return bar(meter, notes(text)).voices().get(0);
    }

    /** The shapes of a bar, as {@link #shapes(Voice)} has them. */
    static String shapes(Meter meter, String text) {
        return shapes(voice(meter, text));
    }

    /** {@code 4. 8~8 r16 3:2(8 8 8)}: dots, ties, rests (hidden ones in brackets, {@code R} for the whole bar), tuplets. */
    static String shapes(Voice voice) {
        var words = new StringBuilder();
        for (int i = 0; i < voice.elements().size(); i++) {
            int at = i;
            words.append(i == 0 || words.charAt(words.length() - 1) == '~' ? "" : " ");
            voice.tuplets().stream()
                    .filter(tuplet -> tuplet.first() == at)
                    .forEach(tuplet -> words.append(tuplet.actual() + ":").append(tuplet.normal() + "("));
            words.append(shape(voice.elements().get(i)));
            boolean ends = voice.tuplets().stream().anyMatch(tuplet -> tuplet.last() == at);
            if (ends) {
                boolean tied = words.charAt(words.length() - 1) == '~';
                words.setLength(words.length() - (tied ? 1 : 0));
                words.append(tied ? ")~" : ")");
            }
        }
        return words.toString();
    }

    private static String shape(Element element) {
        String value = element.value().base().length().denominator()
                + ".".repeat(element.value().dots());
        if (element instanceof Rest rest) {
            return rest.wholeBar() ? "R" : rest.hidden() ? "[r" + value + "]" : "r" + value;
        }
        var chord = (Chord) element;
        return value + (chord.heads().stream().anyMatch(Head::tiedTo) ? "~" : "");
    }

    /** How many elements each beam joins, and the first of them: {@code 0+4 4+4}. */
    static String groups(Meter meter, String text) {
        return voice(meter, text).beams().stream()
                .map(beam -> beam.first() + "+" + beam.parts().size())
                .collect(Collectors.joining(" "));
    }

    /** The parts of the first beam, element by element, each level in turn: {@code b ce e<}. */
    static String parts(Meter meter, String text) {
        return voice(meter, text).beams().get(0).parts().stream()
                .map(levels -> levels.stream().map(PARTS::get).collect(Collectors.joining()))
                .collect(Collectors.joining(" "));
    }
}
