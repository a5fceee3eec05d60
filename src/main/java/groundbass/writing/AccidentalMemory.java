package groundbass.writing;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Pitch;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head.Accidental;
import groundbass.writing.Head.Bent;
import groundbass.writing.Head.Grace;
import groundbass.writing.Head.Sign;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Decides the signs before heads, bar after bar in their order (rule: accidental-for-its-bar). Mutable; one for a line.
 */
final class AccidentalMemory {
    /** No alteration: whatever comes next needs its sign. */
    private static final int UNDECIDED = Integer.MIN_VALUE;

    private Map<Place, Integer> before = Map.of();
    private Key keyBefore;
    private Map<Place, Integer> inBar = new HashMap<>();
    private Set<Place> seen = new HashSet<>();
    private Set<Place> bent = new HashSet<>();
    private Set<Place> contested = Set.of();
    private Key key;

    /** A sign is valid at its letter and octave only (rule: accidental-for-its-bar, accidental-per-octave). */
    private record Place(Letter letter, int octave) {
        static Place of(Pitch pitch) {
            return new Place(pitch.name().letter(), pitch.octave());
        }
    }

    /** Where an element stands, for reading both voices in the order of time. */
    private record Reading(int voice, int element) {
        Element in(List<? extends List<Element>> voices) {
            return voices.get(voice).get(element);
        }
    }

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
        bent = new HashSet<>();
        var elements =
                voices.stream().map(voice -> new ArrayList<>(voice.elements())).toList();
        for (var together : moments(voices)) {
            contested = contested(together.stream().map(at -> at.in(elements)).toList());
            for (var reading : together) {
                elements.get(reading.voice()).set(reading.element(), signed(reading.in(elements)));
            }
        }
        return IntStream.range(0, voices.size())
                .mapToObj(i -> new Voice(
                        elements.get(i), voices.get(i).beams(), voices.get(i).tuplets()))
                .toList();
    }

    /** What begins at one time, in the order of time. */
    private static Collection<List<Reading>> moments(List<Voice> voices) {
        var moments = new TreeMap<Fraction, List<Reading>>();
        for (int voice = 0; voice < voices.size(); voice++) {
            var elements = voices.get(voice).elements();
            for (int element = 0; element < elements.size(); element++) {
                moments.computeIfAbsent(elements.get(element).onset(), at -> new ArrayList<>())
                        .add(new Reading(voice, element));
            }
        }
        return moments.values();
    }

    /** Where heads of one moment have one letter in one octave altered differently (rule: altered-unison). */
    private static Set<Place> contested(List<Element> together) {
        Map<Place, Integer> first = new HashMap<>();
        return together.stream()
                .filter(Chord.class::isInstance)
                .flatMap(element -> ((Chord) element).heads().stream())
                .filter(head -> !head.note().isDead())
                .map(Head::pitch)
                .filter(pitch -> {
                    var known = first.putIfAbsent(Place.of(pitch), pitch.name().alteration());
                    return known != null && known != pitch.name().alteration();
                })
                .map(Place::of)
                .collect(Collectors.toSet());
    }

    private Element signed(Element element) {
        if (!(element instanceof Chord chord)) {
            return element;
        }
        var graces = chord.heads().stream().map(this::grace).toList();
        var heads = IntStream.range(0, graces.size())
                .mapToObj(i -> {
                    var head = chord.heads().get(i);
                    return head.with(accidental(head), graces.get(i), bent(head));
                })
                .toList();
        return new Chord(chord.onset(), chord.value(), chord.length(), heads);
    }

    /** Grace notes stand before their chord, and their signs hold for the bar like any other (rule: grace-note-accidental). */
    private Optional<Grace> grace(Head head) {
        return head.grace().map(grace -> new Grace(grace.pitch(), accidental(grace.pitch())));
    }

    /** A bent string's sign is its own: a later note of that place says what it is anew (rule: bend-in-staff). */
    private Optional<Bent> bent(Head head) {
        return BentPitch.of(head, key)
                .map(pitch -> new Bent(pitch, head.tiedFrom() ? Optional.empty() : bentSign(pitch)));
    }

    private Optional<Accidental> bentSign(Pitch pitch) {
        var sign = accidental(pitch).map(Accidental::sign);
        sign.ifPresent(printed -> bent.add(Place.of(pitch)));
        return sign.map(printed -> new Accidental(printed, false));
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
        boolean stands = !contested.contains(place);
        boolean isSaid = stands && !bent.remove(place);
        int valid = isSaid ? inBar.getOrDefault(place, key.alterationOf(place.letter())) : UNDECIDED;
        inBar.put(place, stands ? alteration : UNDECIDED);
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
