package groundbass.performance;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;

/**
 * A line as it sounds, count-in first. Every moment counts from the start of the count-in, in whole notes; repeats are
 * unrolled, swing is played. The one source of everything audible.
 *
 * @param bars in the order in which they are played
 * @param notes by moment, lowest string first
 * @param chords by moment, cut at bar lines
 */
public record Performance(
        Line line,
        Playing playing,
        CountIn countIn,
        TempoMap tempos,
        List<TimedBar> bars,
        List<TimedNote> notes,
        List<TimedChord> chords) {
    public Performance {
        Objects.requireNonNull(line);
        Objects.requireNonNull(playing);
        Objects.requireNonNull(countIn);
        Objects.requireNonNull(tempos);
        bars = List.copyOf(bars);
        notes = List.copyOf(notes);
        chords = List.copyOf(chords);
    }

    /** Once, at its own tempo. */
    public static Performance of(Line line) {
        return of(line, Playing.ONCE);
    }

    public static Performance of(Line line, Playing playing) {
        var header = line.inForce().get(0);
        var quarters = header.tempo().quartersPerMinute().times(Fraction.of(playing.percent(), 100));
        var countIn = CountIn.of(header.meter(), quarters);
        var bars = Unfolding.of(line, playing.rounds(), countIn.length());
        var tempos = Tempos.of(bars, playing.percent());
        var notes = TimedNotes.of(line, bars, tempos);
        return new Performance(line, playing, countIn, tempos, bars, notes, TimedChords.of(line, bars, tempos));
    }

    /** Every written note once, grace notes left out, in the order in which they are first played. */
    public List<Played> firstPlaying() {
        var firsts = new HashMap<Integer, TimedBar>();
        bars.forEach(bar -> firsts.putIfAbsent(bar.number(), bar));
        var played = new ArrayList<Played>();
        for (var timed : inWrittenOrder()) {
            var origin = timed.origin();
            var bar = firsts.get(origin.written().bar());
            if (origin.pass() == bar.pass() && origin.round() == bar.round()) {
                played.add(new Played(played.size(), new NoteAt(origin.written(), timed.string()), bar, timed));
            }
        }
        return List.copyOf(played);
    }

    /** A rolled chord is one chord, and what follows it comes after all of it. */
    private List<TimedNote> inWrittenOrder() {
        var starts = new HashMap<Origin, Fraction>();
        notes.stream()
                .filter(note -> !note.grace())
                .forEach(note -> starts.merge(note.origin(), note.when().at(), Fraction::min));
        return notes.stream()
                .filter(note -> !note.grace())
                .sorted(Comparator.comparing((TimedNote note) -> starts.get(note.origin()))
                        .thenComparing(TimedNote::string, Comparator.reverseOrder()))
                .toList();
    }

    /** When the first bar that is no pickup starts. */
    public Fraction start() {
        return countIn.length();
    }

    /** When the last bar ends; a note may ring on. */
    public Fraction end() {
        return bars.get(bars.size() - 1).end();
    }

    /** Seconds from the start of the count-in. */
    public double seconds(Fraction moment) {
        return tempos.seconds(moment);
    }

    /** How long the whole takes, count-in included. */
    public double seconds() {
        return seconds(end());
    }
}
