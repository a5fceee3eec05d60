package groundbass.writing;

import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.theory.Key;
import groundbass.theory.Pitch;
import groundbass.theory.Spelling;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;

/**
 * The written name of every note: the player's own where one is forced, else the key's, on the way to the next pitch
 * that differs; a dead note takes its open string's.
 */
final class Spellings {
    private final Line line;
    private List<Onset> following = List.of();

    /** A pitch that sounds later, and the different pitch it moves to itself. */
    private record Onset(int midi, int movesTo) {}

    private Spellings(Line line) {
        this.line = line;
    }

    /** For each bar, the pitches of its notes in their order. */
    static List<List<Pitch>> of(Line line) {
        var spellings = new Spellings(line);
        var inForce = line.inForce();
        var bars = new ArrayList<List<Pitch>>();
        for (int i = line.bars().size() - 1; i >= 0; i--) {
            bars.add(spellings.bar(line.bars().get(i).notes(), inForce.get(i)));
        }
        Collections.reverse(bars);
        return bars;
    }

    /** Bars come last to first, so that what follows is known. */
    private List<Pitch> bar(List<Note> notes, InForce inForce) {
        var pitches = new ArrayList<Pitch>();
        int end = notes.size();
        while (end > 0) {
            int start = end;
            while (start > 0
                    && notes.get(start - 1).onset().equals(notes.get(end - 1).onset())) {
                start--;
            }
            pitches.addAll(0, together(notes.subList(start, end), inForce.key()));
            end = start;
        }
        return pitches;
    }

    private List<Pitch> together(List<Note> notes, Key key) {
        var pitches = new ArrayList<Pitch>();
        var onsets = new ArrayList<Onset>();
        for (var note : notes) {
            var midi = note.midi(line.header().tuning());
            if (midi.isEmpty()) {
                pitches.add(line.header().tuning().string(note.string()).pitch());
            } else {
                int next = next(midi.getAsInt());
                onsets.add(new Onset(midi.getAsInt(), next));
                pitches.add(spelled(note, key, midi.getAsInt(), next));
            }
        }
        if (!onsets.isEmpty()) {
            following = onsets;
        }
        return pitches;
    }

    private int next(int midi) {
        return following.stream()
                .min(Comparator.comparing(onset -> Math.abs(onset.midi() - midi)))
                .map(onset -> onset.midi() == midi ? onset.movesTo() : onset.midi())
                .orElse(midi);
    }

    /** A line admits no forced name but one of what sounds. */
    private static Pitch spelled(Note note, Key key, int midi, int next) {
        return note.ornaments()
                .spelling()
                .map(name -> Pitch.sounding(name, midi))
                .orElseGet(() -> Spelling.of(key, midi, next));
    }
}
