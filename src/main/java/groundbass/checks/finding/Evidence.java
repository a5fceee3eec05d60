package groundbass.checks.finding;

import groundbass.analysis.Analysis;
import groundbass.analysis.Tone;
import groundbass.checks.kin.Figure;
import groundbass.checks.kin.Kin;
import groundbass.fingering.Alternative;
import groundbass.fingering.Fingering;
import groundbass.fingering.Fretboard;
import groundbass.fingering.Hand;
import groundbass.performance.Performance;
import groundbass.performance.Played;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Place;
import groundbass.score.Position;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** A line and what rules want to know of it, worked out once. */
public final class Evidence {
    private static final int NONE = -1;
    private static final int MOST_SEARCHES = 64;

    private final Line line;
    private final Performance performance;
    private final List<Played> notes;
    private final int[] before;
    private final int[] after;
    private final Analysis analysis;
    private final Fingering fingering;
    private List<List<Figure>> figures;
    private List<Kin> kin;
    private int searches;
    private final Map<NoteAt, Played> byNote = new HashMap<>();

    public Evidence(Line line) {
        this.line = line;
        this.performance = Performance.of(line);
        this.notes = performance.firstPlaying();
        this.before = new int[notes.size()];
        this.after = new int[notes.size()];
        this.analysis = Analysis.of(line);
        this.fingering = Fingering.of(performance, neck(), Hand.AVERAGE);
        notes.forEach(note -> byNote.put(note.at(), note));
        link();
    }

    public Line line() {
        return line;
    }

    public Performance performance() {
        return performance;
    }

    public Analysis analysis() {
        return analysis;
    }

    public Fingering fingering() {
        return fingering;
    }

    /**
     * Other ways of playing a passage. A line that needs them everywhere is not repaired by them, so that after many
     * searches there are no more; this bounds the time for the longest line.
     */
    public List<Alternative> others(Passage passage, int most) {
        return searches++ < MOST_SEARCHES
                ? fingering.others(passage, most).stream()
                        .filter(this::isOnNeck)
                        .toList()
                : List.of();
    }

    private boolean isOnNeck(Alternative other) {
        return other.stops().stream()
                .allMatch(stop -> isOnNeck(note(stop.note()), stop.fingered().place()));
    }

    /** Whether a chord holds that begins with this note, or with its bar. */
    public boolean beginsWithChord(Tone tone) {
        var position = tone.at().position();
        boolean begins = position.at().isZero()
                || line.bar(position.bar()).chords().stream()
                        .anyMatch(chord -> chord.at().equals(position.at()));
        return begins && tone.chord().isPresent();
    }

    /** Whether a note is a tone of the chord that holds. */
    public boolean isInChord(NoteAt note) {
        return analysis.at(note).filter(tone -> tone.role().isChordTone()).isPresent();
    }

    public Fretboard neck() {
        return Fretboard.of(line.header());
    }

    public Played note(NoteAt at) {
        return byNote.get(at);
    }

    /** Empty where a note is written in a bar that is never played. */
    public Optional<Played> find(NoteAt at) {
        return Optional.ofNullable(byNote.get(at));
    }

    /** What stands out among figures that are alike. */
    public List<Kin> kin() {
        if (kin == null) {
            kin = Kin.among(figures());
        }
        return kin;
    }

    /** What is played in the beats of each bar, those of the same beats together. */
    public List<List<Figure>> figures() {
        if (figures == null) {
            figures = Figure.byBeats(line);
        }
        return figures;
    }

    /** Whether a note would be on the neck there. */
    public boolean isOnNeck(Played note, Place place) {
        boolean inReach = note.note().ornaments().fit(place, line.header().frets());
        return inReach && place.string() <= line.header().tuning().size();
    }

    /** Every written note once, in the order in which they are first played. */
    public List<Played> notes() {
        return notes;
    }

    /** The note played before this one on its string. */
    public Optional<Played> before(Played note) {
        return at(before[note.index()]);
    }

    /** The note played after this one on its string. */
    public Optional<Played> after(Played note) {
        return at(after[note.index()]);
    }

    /** A place as it is typed. */
    public String typed(Place place) {
        return line.header().tuning().typed(place);
    }

    /** From one note's beginning to the end of another, inside the bar where the other begins. */
    public Passage passage(Played first, Played last) {
        var from = first.at().position();
        var to = last.at().position();
        var end = last.note().end().min(line.bar(to.bar()).to());
        return new Passage(from, new Position(to.bar(), end));
    }

    public Passage passage(Played only) {
        return passage(only, only);
    }

    /** Whether nothing lies between the end of one note as written and the beginning of the other. */
    public static boolean meet(Played first, Played second) {
        return !first.end().isBefore(second.onset());
    }

    private Optional<Played> at(int index) {
        return index == NONE ? Optional.empty() : Optional.of(notes.get(index));
    }

    private void link() {
        Map<Integer, Integer> last = new HashMap<>();
        for (var note : notes) {
            int earlier = last.getOrDefault(note.string(), NONE);
            before[note.index()] = earlier;
            after[note.index()] = NONE;
            if (earlier != NONE) {
                after[earlier] = note.index();
            }
            last.put(note.string(), note.index());
        }
    }
}
