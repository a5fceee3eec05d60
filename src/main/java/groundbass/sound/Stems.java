package groundbass.sound;

import groundbass.groove.Click;
import groundbass.groove.DrumHit;
import groundbass.groove.Piece;
import groundbass.groove.VoicedChord;
import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import groundbass.sound.Shots.Shot;
import groundbass.theory.Pitch;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** Makes the unit that plays one stem. */
final class Stems {
    private static final Set<Piece> CLOSING = Set.of(Piece.HAT, Piece.PEDAL, Piece.OPEN);
    private static final double FIRST_CLICK_HERTZ = 1_760;
    private static final double CLICK_HERTZ = 1_320;
    private static final double CLICK_SECONDS = 0.04;

    /** The first beat is about 5 dB above the others (REFERENCE 7.3, common practice, no source). */
    private static final double FIRST_CLICK = 0.5;

    private static final double OTHER_CLICK = 0.28;
    private static final double CHORD_TONE = 0.11;
    private static final double NORMAL_CHORD_VELOCITY = 64;

    private Stems() {}

    static Unit bass(SampleRate rate, Performance performance) {
        var tuning = performance.line().header().tuning();
        Map<Integer, List<TimedNote>> strings = performance.notes().stream()
                .collect(Collectors.groupingBy(TimedNote::string, TreeMap::new, Collectors.toList()));
        var neck = new Together(strings.entrySet().stream()
                .<Unit>map(string -> new BassString(
                        rate,
                        string.getKey(),
                        tuning.string(string.getKey()).pitch().midi(),
                        string.getValue()))
                .toList());
        return new Amplifier(rate, neck);
    }

    static Unit drums(SampleRate rate, List<DrumHit> hits) {
        var kit = new DrumKit(rate);
        var shots = new ArrayList<Shot>();
        for (int i = 0; i < hits.size(); i++) {
            var hit = hits.get(i);
            long until = hit.piece() == Piece.OPEN ? rate.at(closes(hits, i)) : Long.MAX_VALUE;
            shots.add(new Shot(rate.at(hit.seconds()), kit.sample(hit.piece(), hit.stroke()), 1, until));
        }
        return new Shots(rate, shots);
    }

    /** When an open hat is struck or closed again. */
    private static double closes(List<DrumHit> hits, int index) {
        return hits.subList(index + 1, hits.size()).stream()
                .filter(hit -> CLOSING.contains(hit.piece()))
                .mapToDouble(DrumHit::seconds)
                .findFirst()
                .orElse(Integer.MAX_VALUE);
    }

    static Unit chords(SampleRate rate, List<VoicedChord> chords) {
        return new Tones(
                chords.stream().flatMap(chord -> tones(rate, chord).stream()).toList());
    }

    private static List<Tones.Tone> tones(SampleRate rate, VoicedChord chord) {
        long at = rate.at(chord.when().start());
        long length = Math.max(1, rate.at(chord.when().end()) - at);
        double level = CHORD_TONE * chord.velocity() / NORMAL_CHORD_VELOCITY;
        return chord.voicing().midi().stream()
                .map(key -> new Tones.Tone(at, new SoftTone(rate, Pitch.hertz((double) key), length, level)))
                .toList();
    }

    static Unit clicks(SampleRate rate, List<Click> clicks) {
        float[] first = click(rate, FIRST_CLICK_HERTZ);
        float[] other = click(rate, CLICK_HERTZ);
        return new Shots(
                rate,
                clicks.stream()
                        .map(click -> Shot.of(
                                rate.at(click.seconds()),
                                click.first() ? first : other,
                                click.first() ? FIRST_CLICK : OTHER_CLICK))
                        .toList());
    }

    private static float[] click(SampleRate rate, double hertz) {
        var samples = new float[(int) rate.at(CLICK_SECONDS)];
        new Membrane(rate, hertz, hertz, 1, CLICK_SECONDS, 1).render(samples, 0, samples.length);
        return samples;
    }
}
