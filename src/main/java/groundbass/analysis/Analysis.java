package groundbass.analysis;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.theory.KeyFinding;
import groundbass.theory.KeyProfile;
import groundbass.theory.NamedVoicing;
import groundbass.theory.Pitch;
import groundbass.theory.PitchWeights;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** A line as a theory teacher hears it: what every note means, which runs and chords have names, which key it is in. */
public final class Analysis {
    /** How much more the first note of a bar tells of the key than others (common practice, no source). */
    private static final double FIRST_OF_BAR = 2;

    private final Line line;
    private final List<Onset> onsets;
    private final List<Tone> tones;
    private final Map<NoteAt, Tone> byNote = new HashMap<>();
    private final Map<Position, List<Tone>> byMoment = new HashMap<>();

    private Analysis(Line line) {
        this.line = line;
        this.onsets = Onsets.of(line);
        this.tones = NoteReading.of(line, onsets);
        for (var tone : tones) {
            byNote.put(tone.at(), tone);
            byMoment.computeIfAbsent(tone.at().position(), moment -> new ArrayList<>())
                    .add(tone);
        }
    }

    public static Analysis of(Line line) {
        return new Analysis(line);
    }

    /** Every pitched note in written order, lowest string first. */
    public List<Tone> tones() {
        return tones;
    }

    /** Empty for a dead note. */
    public Optional<Tone> at(NoteAt note) {
        return Optional.ofNullable(byNote.get(note));
    }

    /** The figures of what begins in a passage, as they stand under a staff: {@code 1 b3 5 b7}; empty where nothing does. */
    public String figures(Passage passage) {
        return tones.stream()
                .filter(tone -> passage.contains(tone.at().position()))
                .map(Tone::figure)
                .collect(Collectors.joining(" "));
    }

    /** The figures of what begins at one moment, lowest string first; empty where nothing has a pitch. */
    public String figures(Position moment) {
        return byMoment.getOrDefault(moment, List.of()).stream()
                .map(Tone::figure)
                .collect(Collectors.joining(" "));
    }

    /** Which key the notes seem to be in, by the profile of Krumhansl and Kessler. */
    public KeyFinding key() {
        return KeyFinding.of(weights(), KeyProfile.KRUMHANSL_KESSLER);
    }

    /** How long each pitch class sounds, what stands first in its bar counted twice. */
    public PitchWeights weights() {
        var weighed = new ArrayList<PitchWeights.Weighed>();
        for (var onset : onsets) {
            double factor = onset.position().at().equals(Fraction.ZERO) ? FIRST_OF_BAR : 1;
            for (var note : onset.notes()) {
                weighed.add(new PitchWeights.Weighed(
                        note.midi(), factor * note.note().length().toDouble()));
            }
        }
        return PitchWeights.of(weighed);
    }

    /** The chords that are struck, named where they have a name, in order. */
    public List<Simultaneity> together() {
        return onsets.stream()
                .filter(onset -> onset.notes().size() > 1)
                .flatMap(onset -> together(onset).stream())
                .toList();
    }

    private Optional<Simultaneity> together(Onset onset) {
        var sounding = onset.notes().stream()
                .map(note -> byNote.get(note.at()))
                .sorted(Comparator.comparing(tone -> tone.pitch().midi()))
                .toList();
        List<Pitch> pitches = sounding.stream().map(Tone::pitch).toList();
        return NamedVoicing.of(pitches, onset.chord())
                .map(voicing -> new Simultaneity(sounding.stream().map(Tone::at).toList(), voicing));
    }
}
