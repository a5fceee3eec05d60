package groundbass.intake.draft;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A note before it is seated in a line.
 *
 * @param start, end in whole notes from the beginning of the first bar
 * @param midi what sounds; of a dead note the pitch that stands for its string
 * @param places where it may be played; one where the file says so, none where the pitch alone decides
 * strikes it; empty where the fretting hand alone sounds it
 * @param arrival how the fretting hand comes to it
 * @param graceStep where it comes from a grace note, how many frets that lies above, or below
 * @param name how the file spells it
 */
public record DraftNote(
        Fraction start,
        Fraction end,
        int midi,
        List<Place> places,
        boolean dead,
        Optional<Technique> pluck,
        Optional<Arrival.Kind> arrival,
        OptionalInt graceStep,
        Ornaments ornaments,
        Optional<NoteName> name) {
    public DraftNote {
        places = List.copyOf(places);
        Objects.requireNonNull(pluck);
        Objects.requireNonNull(arrival);
        Objects.requireNonNull(graceStep);
        Objects.requireNonNull(ornaments);
        Objects.requireNonNull(name);
        if (!start.isBefore(end)) {
            throw new IllegalArgumentException("a note lasts: " + start + " to " + end);
        }
    }

    /** A pitch and no more. */
    public static DraftNote of(Fraction start, Fraction end, int midi, Technique pluck) {
        return new DraftNote(
                start,
                end,
                midi,
                List.of(),
                false,
                Optional.of(pluck),
                Optional.empty(),
                OptionalInt.empty(),
                Ornaments.NONE,
                Optional.empty());
    }

    /** The same with a grace note before it, hammered up from or pulled down from. */
    public DraftNote from(int semitonesAbove) {
        var kind = semitonesAbove < 0 ? Arrival.Kind.HAMMER : Arrival.Kind.PULL;
        return new DraftNote(
                start,
                end,
                midi,
                places,
                dead,
                pluck,
                Optional.of(kind),
                OptionalInt.of(semitonesAbove),
                ornaments,
                name);
    }

    DraftNote between(Fraction newStart, Fraction newEnd) {
        return new DraftNote(newStart, newEnd, midi, places, dead, pluck, arrival, graceStep, ornaments, name);
    }

    DraftNote at(Place place) {
        return at(List.of(place));
    }

    /** The same, at one of these. */
    DraftNote at(List<Place> newPlaces) {
        return new DraftNote(start, end, midi, newPlaces, dead, pluck, arrival, graceStep, ornaments, name);
    }

    DraftNote withoutTrill() {
        return new DraftNote(start, end, midi, places, dead, pluck, arrival, graceStep, ornaments.withoutTrill(), name);
    }

    /** The same, struck anew. */
    DraftNote struck(Technique technique) {
        return new DraftNote(
                start,
                end,
                midi,
                places,
                dead,
                Optional.of(pluck.orElse(technique)),
                Optional.empty(),
                OptionalInt.empty(),
                ornaments,
                name);
    }

    /** Whether it is reached from the note before it on its string. */
    boolean isLed() {
        return arrival.isPresent() && graceStep.isEmpty();
    }

    boolean isSeated() {
        return places.size() == 1;
    }

    /** Where it is played, once that is decided. */
    Place place() {
        return places.get(0);
    }
}
