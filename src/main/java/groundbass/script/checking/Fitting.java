package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Described;
import groundbass.script.claims.Manner;
import groundbass.theory.NoteName;
import java.util.EnumSet;
import java.util.OptionalInt;
import java.util.Set;

/** Compares a note of the line with what was said of one. */
final class Fitting {
    private final Timeline timeline;
    private final Neck neck;
    private final boolean ghosts;

    /** What a note may be wrong about. */
    enum Facet {
        STRING,
        FRET,
        NAME,
        TECHNIQUE,
        LENGTH,
        FINGER,
        PAIR
    }

    Fitting(Timeline timeline, Neck neck) {
        this.timeline = timeline;
        this.neck = neck;
        this.ghosts = timeline.notes(timeline.everything()).stream()
                .anyMatch(at -> at.note().has(Mark.GHOST));
    }

    boolean fits(At at, Described said) {
        return wrong(at, said).isEmpty();
    }

    /** In what the note is not what was said; empty where it fits. */
    Set<Facet> wrong(At at, Described said) {
        var wrong = EnumSet.noneOf(Facet.class);
        var note = at.note();
        check(wrong, Facet.STRING, isOr(said.spot().string(), note.string()));
        check(wrong, Facet.FRET, isFretted(note, said.spot().fret()));
        check(
                wrong,
                Facet.NAME,
                said.name().isEmpty() || isNamed(note, said.name().get(), said.isDead()));
        check(wrong, Facet.TECHNIQUE, said.manners().stream().allMatch(manner -> isPlayed(note, manner)));
        check(wrong, Facet.LENGTH, isLong(at, said));
        check(wrong, Facet.FINGER, isFingered(note, said));
        check(wrong, Facet.PAIR, !said.pair() || isPaired(at));
        return wrong;
    }

    /** Where the line marks soft notes, a ghost note is one of those and no dead one. */
    private boolean isPlayed(Note note, Manner manner) {
        return manner.fits(note) && !(manner == Manner.GHOST && ghosts && note.isDead());
    }

    private static void check(Set<Facet> wrong, Facet facet, boolean right) {
        if (!right) {
            wrong.add(facet);
        }
    }

    private static boolean isOr(OptionalInt said, int is) {
        return said.isEmpty() || said.getAsInt() == is;
    }

    private static boolean isFretted(Note note, OptionalInt fret) {
        return fret.isEmpty() || (note.place() instanceof Fretted place && place.fret() == fret.getAsInt());
    }

    /** A dead note may be called by the name of its string. */
    private boolean isNamed(Note note, NoteName name, boolean dead) {
        var tuning = timeline.line().header().tuning();
        if (note.place() instanceof Fretted place) {
            boolean sounding =
                    note.midi(tuning).stream().anyMatch(midi -> Math.floorMod(midi, 12) == name.pitchClass());
            return sounding || neck.isCalled(place, name);
        }
        return dead && neck.isCalled(new Fretted(note.string(), 0), name);
    }

    private boolean isLong(At at, Described said) {
        var length = at.note().length();
        if (Long.bitCount(length.denominator()) != 1) {
            return true; // inside a tuplet lengths are not what they are called
        }
        boolean value = said.length().isEmpty()
                || said.length().get().equals(length)
                || isWritten(at, said.length().get());
        var bar = timeline.whole(at.bar());
        boolean lasts =
                switch (Integer.signum(said.lasts())) {
                    case 0 -> true;
                    case 1 ->
                        length.equals(beat(at).times(said.lasts()))
                                || length.equals(
                                        timeline.at(at.bar()).meter().count().times(said.lasts()));
                    default -> !length.isBefore(bar.to().minus(bar.from()));
                };
        return value && lasts;
    }

    /** A note that is held over a beat may be called by the first of its tied heads. */
    private boolean isWritten(At at, Fraction length) {
        return timeline.isTiedHead(at, length);
    }

    private Fraction beat(At at) {
        return timeline.at(at.bar()).meter().pulse();
    }

    /** The line says fretting fingers only here and there; fingers of the plucking hand are not written. */
    private static boolean isFingered(Note note, Described said) {
        boolean fretting = said.manners().stream().noneMatch(Fitting::isOfPluckingHand);
        return said.finger().isEmpty()
                || !fretting
                || note.ornaments().finger().isEmpty()
                || note.ornaments().finger().getAsInt() == said.finger().getAsInt()
                || isPluckedBy(note, said.finger().getAsInt());
    }

    private static boolean isPluckedBy(Note note, int finger) {
        return note.pluck()
                .filter(technique ->
                        (technique == Technique.INDEX && finger == 1) || (technique == Technique.MIDDLE && finger == 2))
                .isPresent();
    }

    private static boolean isOfPluckingHand(Manner manner) {
        return manner == Manner.POP || manner == Manner.PLUCK || manner == Manner.TAP || manner == Manner.RAKE;
    }

    private boolean isPaired(At at) {
        return timeline.line().bar(at.bar()).notes().stream()
                .anyMatch(other ->
                        other != at.note() && other.onset().equals(at.note().onset()));
    }
}
