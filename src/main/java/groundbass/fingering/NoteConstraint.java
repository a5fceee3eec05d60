package groundbass.fingering;

import groundbass.score.Arrival;
import groundbass.score.Place;
import groundbass.score.Technique;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * A note that must be played, and what is fixed about it already.
 *
 * @param places where it may be played; one where that is fixed
 * @param finger the fretting finger, 1 to 4, where that is fixed
 * @param stroke what strikes the string; empty where nothing does, or where it does not matter
 * @param arrival how the fretting hand reaches it from the note before
 * @param pressed whether it must be stopped by a finger: bent, shaken, slid
 * @param held whether it sounds on from the moment before
 */
public record NoteConstraint(
        List<Place> places,
        OptionalInt finger,
        Optional<Technique> stroke,
        Optional<Arrival.Kind> arrival,
        boolean pressed,
        boolean held) {
    public NoteConstraint {
        places = List.copyOf(places);
        Objects.requireNonNull(finger);
        Objects.requireNonNull(stroke);
        Objects.requireNonNull(arrival);
    }

    /** A pitch that may be played wherever it lies; nowhere, where the neck does not have it. */
    public static NoteConstraint pitch(Fretboard neck, int midi) {
        return anywhere(List.copyOf(neck.tuning().placesOf(midi, neck.frets())));
    }

    public static NoteConstraint at(Place place) {
        return anywhere(List.of(place));
    }

    private static NoteConstraint anywhere(List<Place> places) {
        return new NoteConstraint(places, OptionalInt.empty(), Optional.empty(), Optional.empty(), false, false);
    }

    /** The same, on one string only. */
    public NoteConstraint onString(int string) {
        return among(places.stream().filter(place -> place.string() == string).toList());
    }

    public NoteConstraint among(List<Place> newPlaces) {
        return new NoteConstraint(newPlaces, finger, stroke, arrival, pressed, held);
    }

    public NoteConstraint struck(Technique technique) {
        return new NoteConstraint(places, finger, Optional.of(technique), arrival, pressed, held);
    }

    public NoteConstraint reached(Arrival.Kind kind) {
        return new NoteConstraint(places, finger, stroke, Optional.of(kind), pressed, held);
    }

    /** The same note one moment later, still sounding. */
    public NoteConstraint sustained() {
        return new NoteConstraint(places, finger, Optional.empty(), Optional.empty(), pressed, true);
    }

    boolean isFixed() {
        return places.size() == 1;
    }

    boolean isTapped() {
        return stroke.filter(technique -> technique == Technique.TAP).isPresent();
    }
}
