package groundbass.linetext.print;

import groundbass.score.Fraction;
import groundbass.score.Note;
import java.util.Optional;

/**
 * What one bar shows of a sound.
 *
 * @param note the note where it begins in this bar; empty where it is carried in from the bar before
 * @param from, to inside the bar
 */
record SoundInBar(int string, Optional<Note> note, Fraction from, Fraction to) {
    static SoundInBar of(Note note, Fraction barEnd) {
        return new SoundInBar(
                note.string(), Optional.of(note), note.onset(), note.end().min(barEnd));
    }

    static SoundInBar carried(int string, Fraction from, Fraction to) {
        return new SoundInBar(string, Optional.empty(), from, to);
    }

    boolean overlaps(Fraction start, Fraction end) {
        return from.isBefore(end) && to.isAfter(start);
    }

    /** What a stretch shows of this piece; two bars with the same slices sound the same there. */
    SoundInBar slice(Fraction start, Fraction end) {
        boolean begins = !from.isBefore(start);
        return new SoundInBar(
                string,
                begins ? note.map(found -> found.withLength(Fraction.ONE)) : Optional.empty(),
                from.max(start),
                to.min(end));
    }
}
