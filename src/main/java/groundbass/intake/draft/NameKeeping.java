package groundbass.intake.draft;

import groundbass.score.Bar;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.theory.NoteName;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.Writing;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Keeps the names that notes have in a file where the line would spell them otherwise. */
final class NameKeeping {
    /** A name that is asked for may change what the notes beside it are called. */
    private static final int ROUNDS = 3;

    private final Map<NoteAt, NoteName> names;

    private NameKeeping(Map<NoteAt, NoteName> names) {
        this.names = names;
    }

    static Line of(Line line, Map<NoteAt, NoteName> names) {
        var keeping = new NameKeeping(names);
        var now = line;
        for (int round = 0; round < ROUNDS; round++) {
            var next = keeping.asked(now);
            if (next.equals(now)) {
                return now;
            }
            now = next;
        }
        return now;
    }

    private Line asked(Line line) {
        var written = written(line);
        var bars = IntStream.range(0, line.bars().size())
                .mapToObj(i -> asked(line, line.firstNumber() + i, line.bars().get(i), written))
                .toList();
        return new Line(line.header(), bars);
    }

    private Bar asked(Line line, int number, Bar bar, Map<NoteAt, NoteName> written) {
        List<Note> notes = bar.notes().stream()
                .map(note -> otherName(line, NoteAt.of(number, note), note, written)
                        .map(name -> note.withOrnaments(note.ornaments().withSpelling(name)))
                        .orElse(note))
                .toList();
        return bar.withNotes(notes);
    }

    private Optional<NoteName> otherName(Line line, NoteAt at, Note note, Map<NoteAt, NoteName> written) {
        var midi = note.midi(line.header().tuning());
        return Optional.ofNullable(names.get(at))
                .filter(name -> midi.isPresent() && name.pitchClass() == Math.floorMod(midi.getAsInt(), 12))
                .filter(name -> !name.equals(written.get(at)));
    }

    private static Map<NoteAt, NoteName> written(Line line) {
        var written = new HashMap<NoteAt, NoteName>();
        Writing.of(line).bars().stream()
                .flatMap(bar -> bar.voices().stream())
                .flatMap(voice -> voice.elements().stream())
                .filter(Chord.class::isInstance)
                .flatMap(chord -> ((Chord) chord).heads().stream())
                .forEach((Head head) -> written.put(
                        NoteAt.of(head.noteBar(), head.note()), head.pitch().name()));
        return written;
    }
}
