package groundbass.theory;

import groundbass.theory.ChordSymbol.Chord;

/** Moves a chord by an interval; root and bass take the names that they have in the key (common practice, no source). */
public final class Transposition {
    private Transposition() {}

    /** @param semitones up; below zero down. By whole octaves a chord stays as it is. */
    public static ChordSymbol of(ChordSymbol symbol, int semitones, Key key) {
        if (Math.floorMod(semitones, 12) == 0 || !(symbol instanceof Chord chord)) {
            return symbol;
        }
        var moved = Chord.of(name(key, chord.root(), semitones), chord.quality());
        return new Chord(moved.root(), moved.quality(), chord.bass().map(bass -> bass(moved, bass, semitones, key)));
    }

    /** A bass that is a tone of the chord has its name there. */
    private static NoteName bass(Chord moved, NoteName bass, int semitones, Key key) {
        int pitchClass = Math.floorMod(bass.pitchClass() + semitones, 12);
        return Spelling.inChord(moved, pitchClass).orElseGet(() -> name(key, bass, semitones));
    }

    private static NoteName name(Key key, NoteName name, int semitones) {
        int pitchClass = Math.floorMod(name.pitchClass() + semitones, 12);
        return Spelling.inScale(key, pitchClass)
                .orElseGet(() -> Spelling.outside(key, pitchClass, Spelling.Way.STANDS));
    }
}
