package groundbass.braille;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.text.Messages;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Element.Rest;
import groundbass.writing.Head;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * Music as a code's example prints it, whatever our own writing would make of it: {@code C5:4 D5:8. r:16} are notes by
 * scientific pitch as they are written, and rests, with their values. A {@code ~} behind a note ties it, {@code +}
 * joins the notes of a chord.
 */
final class PrintedMusic {
    private static final Map<String, Base> VALUES = Map.of(
            "1", Base.WHOLE,
            "2", Base.HALF,
            "4", Base.QUARTER,
            "8", Base.EIGHTH,
            "16", Base.SIXTEENTH,
            "32", Base.THIRTY_SECOND,
            "64", Base.SIXTY_FOURTH);

    private PrintedMusic() {}

    /** Notes and bar lines without strings and frets, in ASCII braille. */
    static String cells(Meter meter, String... bars) {
        return cells(meter, List.of(), bars);
    }

    /** @param marks of every note */
    static String cells(Meter meter, List<Mark> marks, String... bars) {
        var units = BarCells.of(written(meter, marks, bars), new BrailleKey(Messages.of(Locale.ENGLISH)), false);
        return units.stream()
                .map(bar -> bar.stream()
                        .map(CellGroup::plain)
                        .reduce(Cells.NONE, Cells::plus)
                        .ascii())
                .collect(Collectors.joining(" "));
    }

    private static WrittenLine written(Meter meter, List<Mark> marks, String... bars) {
        var voices = new ArrayList<Voice>();
        var plain = new ArrayList<Bar>();
        for (int i = 0; i < bars.length; i++) {
            var elements = elements(bars[i], marks);
            var last = elements.get(elements.size() - 1);
            var length = last.onset().plus(last.length());
            voices.add(new Voice(elements, List.of(), List.of()));
            boolean pickup = i == 0 && bars.length > 1 && length.isBefore(meter.length());
            plain.add(Bar.of(meter, List.of())
                    .between(pickup ? meter.length().minus(length) : Fraction.ZERO, pickup ? meter.length() : length));
        }
        var line = new Line(Header.PLAIN.with(meter), plain);
        var written = new ArrayList<WrittenBar>();
        for (int i = 0; i < bars.length; i++) {
            written.add(new WrittenBar(line.inForce().get(i), plain.get(i), List.of(voices.get(i)), List.of(), false));
        }
        return new WrittenLine(line, written);
    }

    private static List<Element> elements(String bar, List<Mark> marks) {
        var elements = new ArrayList<Element>();
        var at = Fraction.ZERO;
        for (String token : bar.split(" ")) {
            var parts = token.split(":");
            int dots = (int) parts[1].chars().filter(each -> each == '.').count();
            var value = new NoteValue(VALUES.get(parts[1].replace(".", "")), dots);
            elements.add(
                    parts[0].equals("r")
                            ? new Rest(at, value, value.length(), false, false)
                            : new Chord(at, value, value.length(), heads(at, value, parts[0], marks)));
            at = at.plus(value.length());
        }
        return elements;
    }

    private static List<Head> heads(Fraction at, NoteValue value, String notes, List<Mark> marks) {
        var heads = new ArrayList<Head>();
        for (String each : notes.split("\\+")) {
            boolean tied = each.endsWith("~");
            var name = tied ? each.substring(0, each.length() - 1) : each;
            int octave = name.charAt(name.length() - 1) - '0';
            var written = new Pitch(
                    NoteName.parse(name.substring(0, name.length() - 1)).orElseThrow(), octave);
            var ornaments = Ornaments.NONE;
            for (var mark : marks) {
                ornaments = ornaments.with(mark);
            }
            var note = Note.plucked(at, value.length(), Place.of(heads.size() + 1, 1), Technique.FINGER)
                    .withOrnaments(ornaments);
            Optional<Head.Accidental> none = Optional.empty();
            heads.add(new Head(note, 1, written.octavesUp(-1), none, Optional.empty(), Optional.empty(), false, tied));
        }
        return heads;
    }
}
