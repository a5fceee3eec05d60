package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.theory.NoteName;
import groundbass.theory.Spelling;
import groundbass.writing.Element;
import groundbass.writing.Spelled;
import groundbass.writing.Spellings;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** A line, asked what lies where. */
public final class Timeline {
    private final Line line;
    private final List<InForce> inForce;
    private WrittenLine written;
    private List<List<Spelled>> spellings;

    /** A note and the number of its bar. */
    public record At(int bar, Note note) {
        public Position position() {
            return new Position(bar, note.onset());
        }
    }

    /** A half-open stretch of one bar. */
    public record Stretch(int bar, Fraction from, Fraction to) {
        public boolean contains(Fraction at) {
            return !at.isBefore(from) && at.isBefore(to);
        }

        public Position start() {
            return new Position(bar, from);
        }
    }

    public Timeline(Line line) {
        this.line = line;
        this.inForce = line.inForce();
    }

    public Line line() {
        return line;
    }

    public boolean has(int bar) {
        return bar >= line.firstNumber() && bar <= lastBar();
    }

    public int lastBar() {
        return line.firstNumber() + line.bars().size() - 1;
    }

    public InForce at(int bar) {
        return inForce.get(line.indexOf(bar));
    }

    public Stretch whole(int bar) {
        return new Stretch(bar, line.bar(bar).from(), line.bar(bar).to());
    }

    public List<Stretch> everything() {
        return Stream.iterate(line.firstNumber(), this::has, bar -> bar + 1)
                .map(this::whole)
                .toList();
    }

    /** The notes that begin within these stretches, in order. */
    public List<At> notes(List<Stretch> stretches) {
        return stretches.stream().flatMap(this::notes).toList();
    }

    private Stream<At> notes(Stretch stretch) {
        return line.bar(stretch.bar()).notes().stream()
                .filter(note -> stretch.contains(note.onset()))
                .map(note -> new At(stretch.bar(), note));
    }

    /** Whether nothing sounds at a moment. */
    public boolean isSilent(int bar, Fraction at) {
        return soundsUntil(bar, at).compareTo(at) <= 0;
    }

    private Fraction soundsUntil(int bar, Fraction at) {
        var here = line.bar(bar).notes().stream()
                .filter(note -> !note.onset().isAfter(at))
                .map(Note::end);
        return Stream.concat(here, heldInto(bar)).reduce(Fraction.ZERO, Fraction::max);
    }

    private Stream<Fraction> heldInto(int bar) {
        if (!has(bar - 1)) {
            return Stream.of();
        }
        var before = line.bar(bar - 1);
        return before.notes().stream().map(note -> note.end().minus(before.to()));
    }

    /** Where silence that reigns at a moment ends: at the next note, or at the end of the bar. */
    public Fraction silentUntil(int bar, Fraction at) {
        return line.bar(bar).notes().stream()
                .map(Note::onset)
                .filter(onset -> onset.isAfter(at))
                .findFirst()
                .orElse(line.bar(bar).to());
    }

    /** Whether a rest of that value is written there; a long silence may be written as several. */
    public boolean isWrittenRest(Position at, Fraction length) {
        return elements(at.bar())
                .anyMatch(element -> element instanceof Element.Rest rest
                        && rest.onset().equals(at.at())
                        && rest.value().length().equals(length));
    }

    /** Whether a note is written as several heads, tied, of which the first has this length. */
    public boolean isTiedHead(At at, Fraction length) {
        return elements(at.bar())
                .anyMatch(element -> element instanceof Element.Chord chord
                        && chord.onset().equals(at.note().onset())
                        && chord.value().length().equals(length)
                        && chord.heads().stream()
                                .anyMatch(head -> head.tiedTo() && head.note().equals(at.note())));
    }

    /** When the written rests of a bar begin. */
    Stream<Fraction> writtenRests(int bar) {
        return elements(bar).filter(Element.Rest.class::isInstance).map(Element::onset);
    }

    /** How many rests are written in a bar. */
    public long restsWritten(int bar) {
        return writtenRests(bar).count();
    }

    private Stream<Element> elements(int bar) {
        return written().bars().get(line.indexOf(bar)).voices().stream().flatMap(voice -> voice.elements().stream());
    }

    private List<List<Spelled>> spellings() {
        if (spellings == null) {
            spellings = Spellings.of(line);
        }
        return spellings;
    }

    private WrittenLine written() {
        if (written == null) {
            written = Writing.of(line);
        }
        return written;
    }

    /** The name that a fretted place is written by in a bar; where it is not played there, its name in the key. */
    public NoteName nameAt(int bar, Fretted place) {
        var notes = line.bar(bar).notes();
        var tuning = line.header().tuning();
        int midi = tuning.midi(place);
        return IntStream.range(0, notes.size())
                .filter(i -> notes.get(i).midi(tuning).equals(OptionalInt.of(midi)))
                .mapToObj(i -> spellings().get(line.indexOf(bar)).get(i).pitch().name())
                .findFirst()
                .orElseGet(() -> Spelling.of(at(bar).key(), midi).name());
    }

    NoteName nameAt(Fretted place) {
        return nameAt(line.firstNumber(), place);
    }
}
