package groundbass.intake.xml;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Harmonic;
import groundbass.score.Ornaments;
import groundbass.score.Technique;
import groundbass.theory.NoteName;
import java.util.EnumSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** A notehead of the file, until it is joined with what belongs to it: mutable, and known to its room alone. */
final class RawNote {
    final int bar;
    final int staff;
    final int voice;
    final boolean grace;
    final int midi;
    /** In whole notes from the beginning of the first bar. */
    Fraction start;

    Fraction end;
    Optional<NoteName> name = Optional.empty();
    OptionalInt string = OptionalInt.empty();
    OptionalInt fret = OptionalInt.empty();
    boolean dead;
    boolean tiedFrom;
    boolean tiedTo;
    Optional<Technique> hand = Optional.empty();
    boolean slurEnds;
    Optional<Arrival.Kind> reached = Optional.empty();
    Optional<Arrival.Kind> leaves = Optional.empty();
    Optional<HarmonicSign> harmonic = Optional.empty();
    Optional<RawNote> from = Optional.empty();
    Ornaments ornaments = Ornaments.NONE;

    /**
     * What a file says of a harmonic.
     *
     * @param sounding whether the note's pitch is what sounds, rather than where the string is stopped or touched
     */
    record HarmonicSign(boolean natural, boolean sounding, OptionalInt touched) {
        Optional<Harmonic> harmonic() {
            return natural
                    ? Optional.of(Harmonic.NATURAL)
                    : touched.isPresent() ? Optional.of(Harmonic.touchedAt(touched.getAsInt())) : Optional.empty();
        }
    }

    RawNote(int bar, int staff, int voice, boolean grace, int midi, Fraction start, Fraction length) {
        this.bar = bar;
        this.staff = staff;
        this.voice = voice;
        this.grace = grace;
        this.midi = midi;
        this.start = start;
        this.end = start.plus(length);
    }

    void shift(Fraction by) {
        start = start.plus(by);
        end = end.plus(by);
    }

    /** Takes over what the other says of the same notehead, or of a later one of the same note. */
    void add(RawNote other) {
        string = string.isPresent() ? string : other.string;
        fret = fret.isPresent() ? fret : other.fret;
        hand = hand.or(() -> other.hand);
        reached = reached.or(() -> other.reached);
        leaves = other.leaves.or(() -> leaves);
        harmonic = harmonic.or(() -> other.harmonic);
        slurEnds |= other.slurEnds;
        dead |= other.dead;
        ornaments = both(ornaments, other.ornaments);
    }

    private static Ornaments both(Ornaments one, Ornaments other) {
        Set<Ornaments.Mark> marks = EnumSet.noneOf(Ornaments.Mark.class);
        marks.addAll(one.marks());
        marks.addAll(other.marks());
        return new Ornaments(
                marks,
                one.bend().or(other::bend),
                one.trill().or(other::trill),
                one.harmonic().or(other::harmonic),
                one.slideIn().or(other::slideIn),
                one.slideOff().or(other::slideOff),
                one.spread().or(other::spread),
                one.finger().isPresent() ? one.finger() : other.finger(),
                one.spelling());
    }
}
