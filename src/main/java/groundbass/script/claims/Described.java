package groundbass.script.claims;

import groundbass.score.Fraction;
import groundbass.theory.NoteName;
import java.util.HashSet;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * What was said of one note (or of each of several alike), as far as it was said.
 *
 * @param many how many such notes
 * @param lasts beats that it sounds; 0 where that is not said, a negative number for the whole bar
 */
public record Described(
        NamedPlace spot,
        Optional<NoteName> name,
        Set<Manner> manners,
        Optional<Fraction> length,
        int lasts,
        OptionalInt finger,
        int many,
        boolean pair) {
    public static final Described NOTHING = new Described(
            NamedPlace.NOWHERE, Optional.empty(), Set.of(), Optional.empty(), 0, OptionalInt.empty(), 1, false);

    public Described {
        manners = Set.copyOf(manners);
    }

    public boolean isDead() {
        return manners.stream().anyMatch(Manner::isPitchless);
    }

    /** Whether it says which note is meant, rather than only how it is played. */
    public boolean hasCore() {
        return spot.fret().isPresent() || spot.string().isPresent() || name.isPresent() || isDead();
    }

    /** Several notes of which more is known than that they are several. */
    public boolean isAmount() {
        return many > 1 && (length.isPresent() || !manners.isEmpty());
    }

    /** Whether it says which single note is meant. */
    public boolean identifies() {
        return name.isPresent() || spot.fret().isPresent();
    }

    /** Whether the note is reached from another on its string. */
    public boolean isReached() {
        return manners.contains(Manner.HAMMER) || manners.contains(Manner.PULL) || manners.contains(Manner.SLIDE);
    }

    /** Two strokes cannot be meant of one note. */
    public boolean clashesWith(Manner manner) {
        return manner.isStroke() && many == 1 && manners.stream().anyMatch(said -> said != manner && said.isStroke());
    }

    public Described with(NamedPlace newSpot) {
        return new Described(newSpot, name, manners, length, lasts, finger, many, pair);
    }

    public Described with(NoteName newName) {
        return new Described(spot, Optional.of(newName), manners, length, lasts, finger, many, pair);
    }

    public Described with(Manner manner) {
        var more = new HashSet<>(manners);
        more.add(manner);
        return new Described(spot, name, more, length, lasts, finger, many, pair);
    }

    /** This without strokes. */
    public Described unstruck() {
        var others = manners.stream().filter(manner -> !manner.isStroke()).collect(Collectors.toSet());
        return new Described(spot, name, others, length, lasts, finger, many, pair);
    }

    public Described with(Fraction newLength) {
        return new Described(spot, name, manners, Optional.of(newLength), lasts, finger, many, pair);
    }

    public Described lasting(int beats) {
        return new Described(spot, name, manners, length, beats, finger, many, pair);
    }

    public Described withFinger(int newFinger) {
        return new Described(spot, name, manners, length, lasts, OptionalInt.of(newFinger), many, pair);
    }

    public Described times(int newMany) {
        return new Described(spot, name, manners, length, lasts, finger, newMany, pair);
    }

    public Described paired() {
        return new Described(spot, name, manners, length, lasts, finger, many, true);
    }
}
