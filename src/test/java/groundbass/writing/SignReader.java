package groundbass.writing;

import groundbass.writing.Element.Chord;
import groundbass.writing.Head.Sign;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads a staff as a player does: the line or space of a head, the signature, the signs of this bar, and ties. */
final class SignReader {
    private static final Map<Sign, Integer> SEMITONES =
            Map.of(Sign.DOUBLE_FLAT, -2, Sign.FLAT, -1, Sign.NATURAL, 0, Sign.SHARP, 1, Sign.DOUBLE_SHARP, 2);
    private static final int[] WHITE_KEYS = {0, 2, 4, 5, 7, 9, 11};

    /** A tie joins heads on one line or space and one string (rule: tie-or-slur). */
    private record Joined(int step, int string) {}

    /** What sounds on there, for heads that are tied to. */
    private final Map<Joined, List<Integer>> tied = new HashMap<>();

    /** The MIDI number that each head says. */
    Map<Head, Integer> read(WrittenBar bar) {
        return read(bar, new IdentityHashMap<>());
    }

    /** @param graces takes what the grace note before each head says */
    Map<Head, Integer> read(WrittenBar bar, Map<Head, Integer> graces) {
        var heard = new IdentityHashMap<Head, Integer>();
        var signs = new HashMap<Integer, Integer>();
        bar.voices().stream()
                .flatMap(voice -> voice.elements().stream())
                .filter(Chord.class::isInstance)
                .map(Chord.class::cast)
                .sorted(Comparator.comparing(Chord::onset))
                .forEach(chord -> {
                    int fifths = bar.inForce().key().fifths();
                    for (var head : chord.heads()) {
                        head.grace()
                                .ifPresent(grace -> graces.put(
                                        head, midi(grace.pitch().diatonicIndex(), grace.accidental(), signs, fifths)));
                    }
                    chord.heads().stream()
                            .filter(head -> !head.note().isDead())
                            .forEach(head -> heard.put(head, midi(head, signs, fifths)));
                });
        return heard;
    }

    private static int midi(int step, Optional<Head.Accidental> accidental, Map<Integer, Integer> signs, int fifths) {
        accidental.ifPresent(sign -> signs.put(step, SEMITONES.get(sign.sign())));
        int alteration = signs.getOrDefault(step, signature(step % 7, fifths));
        return sounding(step, alteration);
    }

    private static int sounding(int step, int alteration) {
        return 12 * (step / 7 + 1) + WHITE_KEYS[step % 7] + alteration;
    }

    private int midi(Head head, Map<Integer, Integer> signs, int fifths) {
        int step = head.pitch().diatonicIndex();
        var waiting = tied.computeIfAbsent(new Joined(step, head.note().string()), key -> new ArrayList<>());
        int alteration;
        if (head.tiedFrom()) {
            alteration = waiting.remove(0);
        } else {
            head.accidental().ifPresent(accidental -> signs.put(step, SEMITONES.get(accidental.sign())));
            alteration = signs.getOrDefault(step, signature(step % 7, fifths));
        }
        if (head.tiedTo()) {
            waiting.add(alteration);
        }
        return sounding(step, alteration);
    }

    /** Sharps come in the order F C G D A E B, flats the other way round. */
    private static int signature(int letter, int fifths) {
        int place = List.of(3, 0, 4, 1, 5, 2, 6).indexOf(letter);
        return place < fifths ? 1 : 6 - place < -fifths ? -1 : 0;
    }
}
