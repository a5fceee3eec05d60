package groundbass.analysis;

import groundbass.analysis.Onset.Sounding;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.theory.Approach;
import groundbass.theory.Degree;
import groundbass.theory.Pitch;
import groundbass.writing.Spellings;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Reads what each note means from its key, its chord and its neighbours. */
final class NoteReading {
    /** So often outside, a pitch class is meant. */
    private static final int RECURS = 3;

    private final List<Onset> onsets;

    private final NeighbourNotes neighbours;
    private final Roles roles;

    private final Map<NoteAt, Pitch> pitches = new HashMap<>();

    private NoteReading(Line line, List<Onset> onsets) {
        this.onsets = onsets;
        this.neighbours = new NeighbourNotes(line, onsets);
        this.roles = new Roles(neighbours);
        var spellings = Spellings.of(line);
        for (int i = 0; i < spellings.size(); i++) {
            var notes = line.bars().get(i).notes();
            for (int n = 0; n < notes.size(); n++) {
                var at = NoteAt.of(line.firstNumber() + i, notes.get(n));
                pitches.put(at, spellings.get(i).get(n).pitch());
            }
        }
    }

    static List<Tone> of(Line line, List<Onset> onsets) {
        var tones = new NoteReading(line, onsets).tones();
        var outside = new int[12];
        tones.stream().filter(tone -> tone.role() == ToneRole.OUTSIDE).forEach(tone -> outside[pitchClass(tone)]++);
        return tones.stream()
                .map(tone -> tone.role() == ToneRole.OUTSIDE && outside[pitchClass(tone)] >= RECURS
                        ? with(tone, ToneRole.RECURRING)
                        : tone)
                .toList();
    }

    private static int pitchClass(Tone tone) {
        return tone.pitch().name().pitchClass();
    }

    private static Tone with(Tone tone, ToneRole role) {
        return new Tone(
                tone.at(),
                tone.pitch(),
                tone.key(),
                tone.degree(),
                tone.chord(),
                tone.chordDegree(),
                role,
                tone.approach());
    }

    private List<Tone> tones() {
        var tones = new ArrayList<Tone>();
        for (int i = 0; i < onsets.size(); i++) {
            for (var note : onsets.get(i).notes()) {
                tones.add(tone(i, note));
            }
        }
        return tones;
    }

    private Tone tone(int index, Sounding note) {
        var onset = onsets.get(index);
        var next = neighbours.after(index, note.midi());
        var pitch = pitches.get(note.at());
        var chordDegree = onset.chord().flatMap(chord -> chord.degree(note.midi()));
        var approach =
                next.filter(Roles::belongs).flatMap(target -> Approach.of(onset.key(), note.midi(), target.midi()));
        return new Tone(
                note.at(),
                pitch,
                onset.key(),
                Degree.of(onset.key().tonic(), pitch.name()),
                onset.chord(),
                chordDegree,
                roles.of(index, onset, note.midi()),
                approach);
    }
}
