package groundbass.intake.draft;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/** Makes a draft into a line; whatever the draft is, a line comes out, and what it has otherwise is told. */
public final class DraftLine {
    private final RoughLine draft;
    private final BarTimes times;
    private final NoticeList notices;
    private final List<List<Note>> notes = new ArrayList<>();
    private final Map<NoteAt, NoteName> names = new HashMap<>();

    private DraftLine(RoughLine draft, NoticeList notices) {
        this.draft = draft;
        this.times = new BarTimes(draft.header(), draft.bars());
        this.notices = notices;
        draft.bars().forEach(bar -> notes.add(new ArrayList<>()));
    }

    /** The line, with what had to be said of it on the way added to {@code notices}. */
    public static Line of(RoughLine draft, NoticeList notices) {
        var mended = new RoughLine(draft.header(), RepeatMending.of(draft.bars(), notices), draft.notes());
        return new DraftLine(Snapping.of(mended, notices), notices).line();
    }

    private Line line() {
        var seated = Seating.of(draft.header(), times, draft.notes(), notices);
        Untangling.of(draft.bars(), times, seated, notices).forEach(this::add);
        var bars = IntStream.range(0, draft.bars().size())
                .mapToObj(i -> draft.bars().get(i).withNotes(notes.get(i)))
                .toList();
        return NameKeeping.of(new Line(header(bars), bars), names);
    }

    private void add(DraftNote draftNote) {
        int index = times.barOf(draftNote.start());
        var note = note(index, draftNote);
        notes.get(index).add(note);
        int number = (draft.bars().get(0).isPickup() ? 0 : 1) + index;
        draftNote.name().ifPresent(name -> names.put(NoteAt.of(number, note), name));
    }

    private Note note(int index, DraftNote note) {
        var onset = times.within(index, note.start());
        var length = note.end().minus(note.start());
        return new Note(onset, length, note.place(), note.pluck(), arrival(note), note.ornaments());
    }

    private static Optional<Arrival> arrival(DraftNote note) {
        boolean grace = note.graceStep().isPresent() && note.place() instanceof Place.Fretted;
        return note.arrival()
                .map(kind -> grace
                        ? Arrival.from(
                                kind,
                                ((Place.Fretted) note.place()).fret()
                                        + note.graceStep().getAsInt())
                        : Arrival.by(kind));
    }

    /** What strikes most notes is the style of the line, so that its text names what differs. */
    private Header header(List<Bar> bars) {
        var counted = new EnumMap<Technique, Integer>(Technique.class);
        bars.stream()
                .flatMap(bar -> bar.notes().stream())
                .map(Note::pluck)
                .flatMap(Optional::stream)
                .forEach(hand -> counted.merge(hand, 1, Integer::sum));
        return counted.entrySet().stream()
                .max(Comparator.<Map.Entry<Technique, Integer>>comparingInt(Map.Entry::getValue)
                        .thenComparing(entry -> -entry.getKey().ordinal()))
                .map(Map.Entry::getKey)
                .map(draft.header()::with)
                .orElse(draft.header());
    }
}
