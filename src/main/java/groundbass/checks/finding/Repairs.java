package groundbass.checks.finding;

import groundbass.fingering.Alternative;
import groundbass.fingering.Cost.Part;
import groundbass.fingering.Stop;
import groundbass.performance.Played;
import groundbass.score.Passage;
import groundbass.score.Place;
import groundbass.text.Message;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Changes that several rules offer. */
public final class Repairs {
    private static final int MOST = 2;

    private Repairs() {}

    /** Another way of playing the same notes; says only what moves. */
    public static Repair places(Evidence evidence, Alternative other) {
        var moved = other.stops().stream()
                .filter(stop -> !place(evidence, stop).equals(stop.fingered().place()))
                .toList();
        String typed = moved.stream()
                .map(stop -> evidence.typed(stop.fingered().place()))
                .collect(Collectors.joining(" "));
        return new Repair(
                Message.of("checks.repair.places", typed, other.position()),
                moved.stream()
                        .map(stop -> new Repair.Edit(
                                stop.note(),
                                new NoteChange.ToPlace(stop.fingered().place())))
                        .toList());
    }

    /** Other places for the notes of a passage that are cheaper than what is written and in no hurry. */
    public static List<Repair> elsewhere(Evidence evidence, Passage passage) {
        return evidence.others(passage, MOST).stream()
                .filter(other -> other.saved() > 0 && other.cost().of(Part.HURRY) == 0)
                .map(other -> places(evidence, other))
                .toList();
    }

    private static Place place(Evidence evidence, Stop stop) {
        return evidence.note(stop.note()).note().place();
    }

    public static Repair place(Evidence evidence, Played note, Place place) {
        return Repair.of(
                Message.of("checks.repair.word", evidence.typed(place)), note.at(), new NoteChange.ToPlace(place));
    }

    /** The same fret's neighbours on the string, lower first, as far as the neck goes. */
    public static List<Place> besides(Evidence evidence, Played note) {
        int fret = note.fret().orElse(0);
        return IntStream.of(fret - 1, fret + 1)
                .filter(other -> other >= 0)
                .mapToObj(other -> Place.of(note.string(), other))
                .filter(place -> evidence.isOnNeck(note, place))
                .toList();
    }
}
