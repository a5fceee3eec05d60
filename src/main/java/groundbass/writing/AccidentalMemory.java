package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Pitch;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head.Accidental;
import groundbass.writing.Head.Grace;
import groundbass.writing.Head.Sign;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Decides the signs before heads, bar after bar in their order (rule: accidental-for-its-bar). Mutable; one for a line.
 */
final class AccidentalMemory {
    private Map<Place, Integer> before = Map.of();
    private Key keyBefore;
    private Map<Place, Integer> inBar = new HashMap<>();
    private Set<Place> seen = new HashSet<>();
    private Key key;

    /** A sign is valid at its letter and octave only (rule: accidental-for-its-bar, accidental-per-octave). */
    private record Place(Letter letter, int octave) {
        static Place of(Pitch pitch) {
            return new Place(pitch.name().letter(), pitch.octave());
        }
    }

    /** Where an element stands, for reading both voices in the order of time. */
    private record Reading(int voice, int element) {}

    AccidentalMemory(Key key) {
        this.key = key;
        this.keyBefore = key;
    }

    /** The same voices with signs; the bar line has cancelled those of the bar before (rule: courtesy-accidental). */
    List<Voice> sign(InForce inForce, List<Voice> voices) {
        before = inBar;
        keyBefore = key;
        key = inForce.key();
        inBar = new HashMap<>();
        seen = new HashSet<>();
        var elements =
                voices.stream().map(voice -> new ArrayList<>(voice.elements())).toList();
        for (var reading : inOrder(voices)) {
            var voice = elements.get(reading.voice());
            voice.set(reading.element(), signed(voice.get(reading.element())));
        }
        return IntStream.range(0, voices.size())
                .mapToObj(i -> new Voice(
                        elements.get(i), voices.get(i).beams(), voices.get(i).tuplets()))
                .toList();
    }

    private static List<Reading> inOrder(List<Voice> voices) {
        return IntStream.range(0, voices.size())
                .boxed()
                .flatMap(
                        voice -> IntStream.range(0, voices.get(voice).elements().size())
                                .mapToObj(element -> new Reading(voice, element)))
                .sorted((a, b) -> onset(voices, a).compareTo(onset(voices, b)))
                .toList();
    }

    private static Fraction onset(List<Voice> voices, Reading reading) {
        return voices.get(reading.voice()).elements().get(reading.element()).onset();
    }

    private Element signed(Element element) {
        if (!(element instanceof Chord chord)) {
            return element;
        }
        var graces = chord.heads().stream().map(this::grace).toList();
        var heads = IntStream.range(0, graces.size())
                .mapToObj(i -> {
                    var head = chord.heads().get(i);
                    return head.with(accidental(head), graces.get(i));
                })
                .toList();
        return new Chord(chord.onset(), chord.value(), chord.length(), heads);
    }

    /** Grace notes stand before their chord, and their signs hold for the bar like any other (rule: grace-note-accidental). */
    private Optional<Grace> grace(Head head) {
        return head.grace().map(grace -> new Grace(grace.pitch(), accidental(grace.pitch())));
    }

    /**
     * Dead notes take none (rule: dead-note-no-accidental). A tied head repeats none, and over a bar line leaves
     * nothing behind: a later note needs the sign anew (rule: accidental-over-tie).
     */
    private Optional<Accidental> accidental(Head head) {
        return head.note().isDead() || head.tiedFrom() ? Optional.empty() : accidental(head.pitch());
    }

    /** The sign that is valid from here, alone (rule: plain-sharp-after-double). */
    private Optional<Accidental> accidental(Pitch pitch) {
        var place = Place.of(pitch);
        int alteration = pitch.name().alteration();
        boolean first = seen.add(place);
        int valid = inBar.getOrDefault(place, key.alterationOf(place.letter()));
        inBar.put(place, alteration);
        if (valid != alteration) {
            return Optional.of(new Accidental(Sign.of(alteration), false));
        }
        return first && wasOtherwise(place.letter(), alteration)
                ? Optional.of(new Accidental(Sign.of(alteration), true))
                : Optional.empty();
    }

    /**
     * Whether the bar before left this letter, in any octave, altered against its key and unlike now (rule:
     * courtesy-accidental).
     */
    private boolean wasOtherwise(Letter letter, int alteration) {
        return before.entrySet().stream()
                .anyMatch(entry -> entry.getKey().letter() == letter
                        && entry.getValue() != alteration
                        && entry.getValue() != keyBefore.alterationOf(letter));
    }
}
