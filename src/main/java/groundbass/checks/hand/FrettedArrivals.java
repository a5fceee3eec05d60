package groundbass.checks.hand;

import groundbass.checks.finding.Evidence;
import groundbass.checks.finding.Finding;
import groundbass.checks.finding.NoteChange;
import groundbass.checks.finding.Repair;
import groundbass.performance.Played;
import groundbass.remark.Severity;
import groundbass.score.Arrival;
import groundbass.text.Message;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.Stream;

/** The notes that the fretting hand reaches by itself, each with the fret it comes from. */
final class FrettedArrivals {
    private FrettedArrivals() {}

    /** A note, how it is reached, and from which fret: the grace note's, or that of the note before on its string. */
    record From(Played note, Arrival.Kind kind, int source) {
        int target() {
            return note.fret().orElseThrow();
        }
    }

    static Stream<From> of(Evidence evidence, Arrival.Kind kind) {
        return evidence.notes().stream()
                .filter(note -> note.fret().isPresent())
                .filter(note -> note.note()
                        .arrival()
                        .filter(arrival -> arrival.kind() == kind)
                        .isPresent())
                .flatMap(note -> source(evidence, note).stream().mapToObj(fret -> new From(note, kind, fret)));
    }

    private static OptionalInt source(Evidence evidence, Played note) {
        var arrival = note.note().arrival().orElseThrow();
        if (arrival.isGrace()) {
            return arrival.graceFret();
        }
        return evidence.before(note).map(Played::fret).orElseGet(OptionalInt::empty);
    }

    static Finding finding(Evidence evidence, From from, String code) {
        return new Finding(
                code,
                Severity.IMPOSSIBLE,
                evidence.passage(from.note()),
                List.of(from.note().at()),
                Message.of("checks." + code, from.source(), from.target()),
                List.of());
    }

    static Repair to(From from, Arrival.Kind kind) {
        return Repair.of(
                Message.of("checks.repair.word", kind.word()), from.note().at(), new NoteChange.ToArrival(kind));
    }

    static Repair strike(From from) {
        var style = from.note().inForce().style();
        return Repair.of(
                Message.of("checks.repair.word", style.word()), from.note().at(), new NoteChange.ToStroke(style));
    }
}
