package groundbass.writing;

import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Harmony;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Pitch;
import groundbass.theory.Spelling;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The written name of every note of a line, for all that prints, tells or explains it: the player's own where one is
 * forced, else by chord, by what it moves to, and by key ({@link BarSpelling}); a dead note takes its open string's.
 */
public final class Spellings {
    private final Line line;
    private final Harmony harmony;
    private final List<InForce> inForce;
    private List<Onset> following = List.of();

    /** A pitch that sounds later over a chord, and the different pitch that it moves to itself. */
    private record Onset(int midi, int movesTo, Optional<Chord> chord) {
        boolean isRoot() {
            return chord.filter(each -> each.root().pitchClass() == Math.floorMod(midi, 12))
                    .isPresent();
        }
    }

    private Spellings(Line line) {
        this.line = line;
        this.harmony = new Harmony(line);
        this.inForce = line.inForce();
    }

    /** For each bar, its notes in their order. */
    public static List<List<Spelled>> of(Line line) {
        var spellings = new Spellings(line);
        var bars = new ArrayList<List<Spelled>>();
        for (int i = line.bars().size() - 1; i >= 0; i--) {
            bars.add(spellings.bar(i));
        }
        Collections.reverse(bars);
        return bars;
    }

    private List<Spelled> bar(int index) {
        var bar = line.bars().get(index);
        var asked = asked(index, bar);
        var pitches = BarSpelling.of(asked);
        var main = new ArrayList<Pitch>();
        var graces = new ArrayList<Optional<Pitch>>();
        for (var note : bar.notes()) {
            main.add(line.header().tuning().string(note.string()).pitch());
            graces.add(Optional.empty());
        }
        for (int i = 0; i < pitches.size(); i++) {
            var each = asked.get(i);
            if (each.grace()) {
                graces.set(each.note(), Optional.of(pitches.get(i)));
            } else {
                main.set(each.note(), pitches.get(i));
            }
        }
        var spelled = new ArrayList<Spelled>();
        for (int i = 0; i < main.size(); i++) {
            spelled.add(new Spelled(main.get(i), graces.get(i)));
        }
        return spelled;
    }

    /** Bars and moments come last to first, so that what follows is known. */
    private List<PitchToName> asked(int index, Bar bar) {
        var asked = new ArrayList<PitchToName>();
        int end = bar.notes().size();
        while (end > 0) {
            int start = end;
            var at = bar.notes().get(end - 1).onset();
            while (start > 0 && bar.notes().get(start - 1).onset().equals(at)) {
                start--;
            }
            asked.addAll(0, together(index, bar.notes(), start, end));
            end = start;
        }
        return asked;
    }

    /** The notes of one moment, its grace notes first. */
    private List<PitchToName> together(int index, List<Note> notes, int start, int end) {
        var graces = new ArrayList<PitchToName>();
        var main = new ArrayList<PitchToName>();
        var onsets = new ArrayList<Onset>();
        for (int i = start; i < end; i++) {
            var note = notes.get(i);
            var midi = note.midi(line.header().tuning());
            if (midi.isEmpty()) {
                continue;
            }
            int next = next(midi.getAsInt());
            onsets.add(new Onset(midi.getAsInt(), next, harmony.at(index, note.onset())));
            main.add(asked(index, i, midi.getAsInt(), next)
                    .withForced(note.ornaments().spelling()));
            var fretted = grace(note);
            if (fretted.isPresent()) {
                graces.add(asked(index, i, fretted.getAsInt(), midi.getAsInt()).asGrace());
            }
        }
        following = onsets.isEmpty() ? following : onsets;
        graces.addAll(main);
        return graces;
    }

    private PitchToName asked(int index, int number, int midi, int next) {
        var note = line.bars().get(index).notes().get(number);
        var at = note.onset();
        var chord = harmony.at(index, at);
        var way = way(midi, next, chord);
        return new PitchToName(
                number,
                note.string(),
                note.arrival().filter(arrival -> !arrival.isGrace()).isPresent(),
                false,
                at,
                midi,
                way,
                inForce.get(index).key(),
                chord,
                Optional.empty());
    }

    private Spelling.Way way(int midi, int next, Optional<Chord> chord) {
        var way = Spelling.Way.of(midi, next);
        boolean leads = way == Spelling.Way.RISES
                && following.stream()
                        .anyMatch(onset -> onset.midi() == next
                                && onset.isRoot()
                                && !onset.chord().equals(chord));
        return leads ? Spelling.Way.LEADS : way;
    }

    private OptionalInt grace(Note note) {
        return note.arrival()
                .map(Arrival::graceFret)
                .filter(OptionalInt::isPresent)
                .map(fret ->
                        OptionalInt.of(line.header().tuning().midi(new Place.Fretted(note.string(), fret.getAsInt()))))
                .orElse(OptionalInt.empty());
    }

    /** The nearest pitch of what follows; where that is the same pitch class, what it moves to. */
    private int next(int midi) {
        return following.stream()
                .min(Comparator.comparing(onset -> Math.abs(onset.midi() - midi)))
                .map(onset -> Math.floorMod(onset.midi() - midi, 12) == 0 ? onset.movesTo() : onset.midi())
                .orElse(midi);
    }
}
