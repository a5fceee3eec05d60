package groundbass.intake.xml;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Fraction;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;

/** Grace notes go to the note that they lead to; of several before one note the last. */
final class GraceJoining {
    private GraceJoining() {}

    /** @return the notes without grace notes */
    static List<RawNote> of(List<RawNote> notes, NoticeList notices) {
        var plain = notes.stream().filter(note -> !note.grace).toList();
        var byStart = new HashMap<Fraction, List<RawNote>>();
        plain.stream().filter(note -> !note.tiedFrom).forEach(note -> byStart.computeIfAbsent(
                        note.start, start -> new ArrayList<>())
                .add(note));
        notes.stream().filter(note -> note.grace).forEach(grace -> {
            var main = main(grace, byStart.getOrDefault(grace.start, List.of()));
            boolean taken = main.isEmpty() || main.get().from.isPresent();
            if (taken) {
                notices.leftOut(grace.bar, Message.of("intake.left.grace"));
            }
            main.ifPresent(note -> note.from = Optional.of(grace));
        });
        return plain;
    }

    private static Optional<RawNote> main(RawNote grace, List<RawNote> candidates) {
        return candidates.stream()
                .filter(note -> note.bar == grace.bar && !note.dead && mayShareString(grace, note))
                .min(Comparator.comparing((RawNote note) -> note.voice != grace.voice));
    }

    private static boolean mayShareString(RawNote grace, RawNote note) {
        return grace.string.isEmpty() || note.string.isEmpty() || grace.string.equals(note.string);
    }
}
