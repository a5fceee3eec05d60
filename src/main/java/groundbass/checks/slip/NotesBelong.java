package groundbass.checks.slip;

import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Repair;
import groundbass.checks.finding.Repairs;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Place;
import java.util.List;
import java.util.stream.Stream;

/**
 * A note outside key and chord that leads nowhere may be a slip. Approach and passing notes, blue notes, and what the line
 * plays again and again are meant (rule: scale-degrees,
 * approach-notes; what counts as meant is common practice, no source).
 */
final class NotesBelong implements Rule {
    /** Where more than this share is outside, the key is in question, not each note. */
    private static final double FLOOD = 0.2;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var tones = evidence.analysis().tones();
        var outside =
                tones.stream().filter(tone -> tone.role() == ToneRole.OUTSIDE).toList();
        return outside.size() > FLOOD * tones.size() + 1
                ? Stream.empty()
                : outside.stream().map(tone -> finding(evidence, tone));
    }

    private static Finding finding(Evidence evidence, Tone tone) {
        var note = evidence.note(tone.at());
        String code = tone.chord().isPresent() ? "note-outside-chord" : "note-outside-key";
        return Finding.of(
                        evidence,
                        code,
                        Severity.WORTH_A_LOOK,
                        List.of(note),
                        tone.pitch().name().spoken(),
                        tone.key().said(),
                        tone.chord().map(Object::toString).orElse(""))
                .with(repairs(evidence, note, tone));
    }

    private static List<Repair> repairs(Evidence evidence, Played note, Tone tone) {
        if (note.note().ornaments().harmonic().isPresent()) {
            return List.of();
        }
        return Repairs.besides(evidence, note).stream()
                .filter(place -> belongs(evidence, place, tone))
                .map(place -> Repairs.place(evidence, note, place))
                .toList();
    }

    private static boolean belongs(Evidence evidence, Place place, Tone tone) {
        int midi = evidence.line().header().tuning().midi((Place.Fretted) place);
        boolean inKey = tone.key().scale().stream().anyMatch(name -> name.pitchClass() == Math.floorMod(midi, 12));
        return inKey || tone.chord().flatMap(chord -> chord.degree(midi)).isPresent();
    }
}
