package groundbass.web.desk.line;

import groundbass.fingering.Alternative;
import groundbass.fingering.Fingering;
import groundbass.fingering.Fretboard;
import groundbass.fingering.Grip;
import groundbass.fingering.Hand;
import groundbass.fingering.NoteConstraint;
import groundbass.fingering.Search;
import groundbass.fingering.SoundingMoment;
import groundbass.fingering.Stop;
import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.linetext.source.Splice;
import groundbass.score.Fraction;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Place;
import groundbass.score.Position;
import groundbass.text.Messages;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Asks the fingering search on behalf of the page's script. */
final class LineFingering {
    private static final int MOST_WAYS = 3;
    private static final int TOLD_PARTS = 2;
    /** Seconds from one note to the next while writing from a keyboard: a moderate eighth note. */
    private static final double STEP = 0.3;

    private final String text;
    private final Reading reading;

    LineFingering(String text) {
        this.text = text;
        this.reading = LineText.read(text);
    }

    /** An event as line text has it; empty where no string reaches. */
    record PlacesAnswer(String event) {}

    record WaysAnswer(List<WayView> ways) {}

    /** Another way of playing a bar: its places, why one would, and the change of the text. */
    record WayView(String places, String why, List<Splice> splices) {
        WayView {
            splices = Splice.inOrder(splices); // the notes of a chord come by their strings, however they are typed
        }
    }

    /**
     * Where pitches lie best after what was just played.
     *
     * @param before events of the last few steps, each of places as they are typed
     */
    PlacesAnswer places(List<Integer> pitches, List<List<Place>> before) {
        var neck = Fretboard.of(reading.line().header());
        var moments = new ArrayList<SoundingMoment>();
        for (var event : before) {
            moments.add(moment(
                    moments.size(), event.stream().map(NoteConstraint::at).toList()));
        }
        var wanted =
                pitches.stream().map(midi -> NoteConstraint.pitch(neck, midi)).toList();
        if (wanted.isEmpty() || wanted.stream().anyMatch(note -> note.places().isEmpty())) {
            return new PlacesAnswer("");
        }
        moments.add(moment(moments.size(), wanted));
        String event = Search.best(neck, Hand.AVERAGE, moments)
                .filter(way -> way.cost().isPossible())
                .map(way -> typed(way.grips().get(way.grips().size() - 1)))
                .orElse("");
        return new PlacesAnswer(event);
    }

    private static SoundingMoment moment(int index, List<NoteConstraint> notes) {
        return new SoundingMoment(index * STEP, (index + 1) * STEP, notes);
    }

    private String typed(Grip grip) {
        var tuning = reading.line().header().tuning();
        return grip.notes().stream().map(note -> tuning.typed(note.place())).collect(Collectors.joining("+"));
    }

    /** The places of an event as typed, {@code D4+G5}; those that are on no string of the line are left out. */
    List<Place> read(String event) {
        var tuning = reading.line().header().tuning();
        return IntStream.rangeClosed(1, tuning.size())
                .boxed()
                .flatMap(string -> IntStream.rangeClosed(
                                0, reading.line().header().frets())
                        .<Place>mapToObj(fret -> new Place.Fretted(string, fret)))
                .filter(place -> List.of(event.split("\\+")).contains(tuning.typed(place)))
                .toList();
    }

    /** The next best ways of playing a bar. */
    WaysAnswer ways(int bar, Messages messages) {
        var line = reading.line();
        int index = line.indexOf(bar);
        if (index < 0 || index >= line.bars().size()) {
            return new WaysAnswer(List.of());
        }
        var passage = new Passage(new Position(bar, Fraction.ZERO), new Position(bar + 1, Fraction.ZERO));
        var ways = Fingering.of(line).others(passage, MOST_WAYS).stream()
                .flatMap(other -> view(other, messages).stream())
                .toList();
        return new WaysAnswer(ways);
    }

    private Optional<WayView> view(Alternative other, Messages messages) {
        var splices = new ArrayList<Splice>();
        for (var stop : other.stops()) {
            var splice = splice(stop);
            if (splice.isEmpty()) {
                return Optional.empty(); // a copied bar is fingered where it is written
            }
            splices.add(splice.get());
        }
        var tuning = reading.line().header().tuning();
        String places = other.stops().stream()
                .map(stop -> tuning.typed(stop.fingered().place()))
                .collect(Collectors.joining(" "));
        return Optional.of(new WayView(places, why(other, messages), splices));
    }

    private Optional<Splice> splice(Stop stop) {
        NoteAt note = stop.note();
        var tuning = reading.line().header().tuning();
        return reading.origins()
                .note(note.position().bar(), note.position().at(), note.string())
                .map(span -> TextPlaces.of(text)
                        .splice(span, tuning.typed(stop.fingered().place())))
                .filter(splice -> TextPlaces.isPlace(text.substring(splice.from(), splice.to())));
    }

    /** How it compares, where the hand stands, and what it costs most. */
    private static String why(Alternative other, Messages messages) {
        String compared = other.saved() > 0.5
                ? messages.say("desk.ways.easier")
                : messages.say(other.saved() < -0.5 ? "desk.ways.harder" : "desk.ways.same");
        String hand = other.underOneHand()
                ? messages.say("desk.ways.onehand", other.position())
                : messages.say("desk.ways.from", other.position());
        String costs = other.cost().parts().entrySet().stream()
                .filter(part -> part.getValue() > 0)
                .sorted(Comparator.comparing(part -> -part.getValue()))
                .limit(TOLD_PARTS)
                .map(part -> messages.say(part.getKey().messageKey()))
                .collect(Collectors.joining(", "));
        return compared + " " + hand + (costs.isEmpty() ? "" : " " + messages.say("desk.ways.costs", costs));
    }
}
