package groundbass.checks.finding;

import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Message;
import java.util.List;
import java.util.Objects;

/**
 * One remark on a line.
 *
 * @param code which rule speaks, stable, for programs: {@code hammer-not-up}
 * @param passage what it is about, in whole events
 * @param notes the notes it is about, in order; empty where it speaks of bars as a whole
 * @param reason one or two sentences that name neither bar nor count, for those stand before them
 * @param repairs what would put it right, the likeliest first
 */
public record Finding(
        String code, Severity severity, Passage passage, List<NoteAt> notes, Message reason, List<Repair> repairs) {
    public Finding {
        Objects.requireNonNull(code);
        Objects.requireNonNull(severity);
        Objects.requireNonNull(passage);
        Objects.requireNonNull(reason);
        notes = List.copyOf(notes);
        repairs = List.copyOf(repairs);
    }

    /** About single notes, in order. */
    public static Finding of(Evidence evidence, String code, Severity severity, List<Played> notes, Object... args) {
        return new Finding(
                code,
                severity,
                evidence.passage(notes.get(0), notes.get(notes.size() - 1)),
                notes.stream().map(Played::at).toList(),
                Message.of("checks." + code, args),
                List.of());
    }

    /** Where it begins: its bar and its time in the bar. */
    public Position position() {
        return passage.from();
    }

    public Finding with(Repair repair) {
        return new Finding(code, severity, passage, notes, reason, List.of(repair));
    }

    public Finding with(List<Repair> newRepairs) {
        return new Finding(code, severity, passage, notes, reason, newRepairs);
    }
}
