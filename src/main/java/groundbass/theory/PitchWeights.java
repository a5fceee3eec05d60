package groundbass.theory;

import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/** How much of the time each of the twelve pitch classes sounds, C first. The unit does not matter. */
public record PitchWeights(List<Double> byClass) {
    public PitchWeights {
        byClass = List.copyOf(byClass);
        if (byClass.size() != 12 || byClass.stream().anyMatch(weight -> !(weight >= 0))) {
            throw new IllegalArgumentException("twelve weights, none negative: " + byClass);
        }
    }

    /** A pitch and for how long it counts. */
    public record Weighed(int midi, double weight) {}

    public static PitchWeights of(Collection<Weighed> notes) {
        var sums = new Double[12];
        Arrays.fill(sums, 0.0);
        notes.forEach(note -> sums[Math.floorMod(note.midi(), 12)] += note.weight());
        return new PitchWeights(List.of(sums));
    }

    public double of(int pitchClass) {
        return byClass.get(Math.floorMod(pitchClass, 12));
    }

    public double total() {
        return byClass.stream().mapToDouble(Double::doubleValue).sum();
    }

    /** The share that lies in a scale, 0 to 1; 1 where nothing sounds. */
    public double shareIn(NoteName tonic, Scale scale) {
        double inside = scale.semitones().stream()
                .mapToDouble(semitones -> of(tonic.pitchClass() + semitones))
                .sum();
        return total() == 0 ? 1 : inside / total();
    }
}
