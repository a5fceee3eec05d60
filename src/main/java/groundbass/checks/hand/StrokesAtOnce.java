package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.Rule;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What one hand strikes at one moment: one thumb strikes one string, or two that lie side by side; a pick strikes
 * neighbours; thumb and three fingers take at most four strings (rule: strokes-at-once).
 */
final class StrokesAtOnce implements Rule {
    private static final int MOST_STRINGS = 4;

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        return chords(evidence).stream()
                .flatMap(chord -> code(chord).map(code -> Finding.of(evidence, code, severity(code), chord)).stream());
    }

    private static List<List<Played>> chords(Evidence evidence) {
        var chords = new ArrayList<List<Played>>();
        var chord = new ArrayList<Played>();
        for (var note : evidence.notes()) {
            if (!chord.isEmpty()
                    && !chord.get(0)
                            .timed()
                            .when()
                            .at()
                            .equals(note.timed().when().at())) {
                chords.add(List.copyOf(chord));
                chord.clear();
            }
            chord.add(note);
        }
        chords.add(List.copyOf(chord));
        return chords.stream().filter(notes -> notes.size() > 1).toList();
    }

    private static Optional<String> code(List<Played> chord) {
        if (gap(by(chord, Technique.SLAP)) > 1 || by(chord, Technique.SLAP).size() > 2) {
            return Optional.of("thumb-on-two-strings");
        }
        if (gap(by(chord, Technique.PICK)) > 1) {
            return Optional.of("pick-over-a-string");
        }
        long plucked = chord.stream()
                .filter(note ->
                        note.note().pluck().filter(StrokesAtOnce::isFingers).isPresent())
                .count();
        return plucked > MOST_STRINGS ? Optional.of("too-many-strings") : Optional.empty();
    }

    private static boolean isFingers(Technique technique) {
        return switch (technique) {
            case SLAP, POP, THUMB, FINGER, INDEX, MIDDLE, THUMB_DOWN, THUMB_UP, PLUCK, TAP -> true;
            case PICK, MUTE, RAKE, LEFT_HAND -> false;
        };
    }

    private static List<Played> by(List<Played> chord, Technique technique) {
        return chord.stream()
                .filter(note -> note.note().pluck().filter(technique::equals).isPresent())
                .sorted(Comparator.comparing(Played::string))
                .toList();
    }

    /** The widest distance between neighbours, in strings. */
    private static int gap(List<Played> notes) {
        int widest = 0;
        for (int i = 1; i < notes.size(); i++) {
            widest = Math.max(widest, notes.get(i).string() - notes.get(i - 1).string());
        }
        return widest;
    }

    private static Severity severity(String code) {
        return code.equals("thumb-on-two-strings") ? Severity.IMPOSSIBLE : Severity.UNWISE;
    }
}
