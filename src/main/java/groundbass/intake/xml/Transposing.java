package groundbass.intake.xml;

import groundbass.intake.draft.KeyNames;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * How far what sounds lies from what is written, by staves: notes, keys and chord symbols of a part are written for the
 * instrument (MusicXML 4.0, transpose). An octave clef moves nothing, for pitches are written so. Mutable.
 */
final class Transposing {
    private static final int ALL = 0;
    private static final int MOST = 48;
    static final int MOST_STAVES = 100;

    /** Beyond F flat and B sharp a name is written as its other one. */
    private static final int FLATTEST = -8;

    private static final int SHARPEST = 12;

    private final Map<Integer, Move> moves = new HashMap<>();

    /** @param fifths how far a name moves along the fifths, upwards where positive */
    private record Move(int semitones, int fifths) {
        static final Move NONE = new Move(0, 0);

        /** An interval of so many steps and semitones: a second is one and two, and two fifths. */
        static Move of(int steps, int semitones, int octaves) {
            int fifths = 7 * semitones - 12 * steps;
            // without its steps, or with some that no such interval has, the nearer of the two names
            boolean known = Math.abs(fifths) <= Key.MOST_FIFTHS;
            int near = Math.floorMod(7 * semitones + 5, 12) - 5;
            int all = semitones + 12 * octaves;
            return new Move(Math.max(-MOST, Math.min(MOST, all)), known ? fifths : near);
        }
    }

    void read(XmlElement attributes) {
        attributes.all("transpose").forEach(transpose -> {
            int staff = transpose.attribute("number").flatMap(XmlNumbers::whole).orElse(ALL);
            if (staff == ALL) {
                moves.clear();
            }
            if (staff <= MOST_STAVES) {
                moves.put(
                        staff,
                        Move.of(
                                figure(transpose, "diatonic"),
                                figure(transpose, "chromatic"),
                                figure(transpose, "octave-change")));
            }
        });
    }

    private static int figure(XmlElement transpose, String name) {
        return transpose
                .text(name)
                .flatMap(XmlNumbers::decimal)
                .map(each -> (int) each.floor())
                .filter(each -> Math.abs(each) <= MOST)
                .orElse(0);
    }

    private Move move(int staff) {
        return Optional.ofNullable(moves.get(staff)).orElse(moves.getOrDefault(ALL, Move.NONE));
    }

    /** Semitones from what is written to what sounds. */
    int of(int staff) {
        return move(staff).semitones();
    }

    /** The key that sounds; one of more than seven signs has its other name. */
    Optional<Key> key(int staff, Key written) {
        int fifths = written.fifths() + move(staff).fifths();
        int turned = fifths > Key.MOST_FIFTHS ? fifths - 12 : fifths < -Key.MOST_FIFTHS ? fifths + 12 : fifths;
        return KeyNames.of(turned, written.mode());
    }

    NoteName name(int staff, NoteName written) {
        int fifths = written.fifths() + move(staff).fifths();
        int turned = fifths > SHARPEST ? fifths - 12 : fifths < FLATTEST ? fifths + 12 : fifths;
        return move(staff).fifths() == 0 ? written : NoteName.ofFifths(turned);
    }

    ChordSymbol chord(int staff, ChordSymbol written) {
        return written instanceof Chord chord
                ? new Chord(
                        name(staff, chord.root()), chord.quality(), chord.bass().map(bass -> name(staff, bass)))
                : written;
    }
}
