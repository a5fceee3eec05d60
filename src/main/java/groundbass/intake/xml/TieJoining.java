package groundbass.intake.xml;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Fraction;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Heads that are tied become one note. Over a repeat sign no line holds a note: there it is struck again. */
final class TieJoining {
    private final Set<Fraction> seams;
    private final NoticeList notices;
    private final Map<Fraction, List<RawNote>> open = new HashMap<>();
    private final List<RawNote> joined = new ArrayList<>();

    private TieJoining(Set<Fraction> seams, NoticeList notices) {
        this.seams = seams;
        this.notices = notices;
    }

    /**
     * @param notes without grace notes
     * @param seams the moments that no note is held over
     */
    static List<RawNote> of(List<RawNote> notes, Set<Fraction> seams, NoticeList notices) {
        var joining = new TieJoining(seams, notices);
        notes.stream()
                .sorted(Comparator.comparing((RawNote note) -> note.start))
                .forEach(joining::add);
        return joining.joined;
    }

    private void add(RawNote note) {
        var before = note.tiedFrom ? before(note) : Optional.<RawNote>empty();
        if (note.tiedFrom && before.isEmpty()) {
            String key = seams.contains(note.start) ? "intake.changed.seamtie" : "intake.changed.tie";
            notices.changed(note.bar, Message.of(key));
        }
        before.ifPresent(head -> open.get(note.start).remove(head));
        before.ifPresentOrElse(head -> head.add(note), () -> joined.add(note));
        var whole = before.orElse(note);
        whole.end = note.end;
        if (note.tiedTo) {
            open.computeIfAbsent(note.end, end -> new ArrayList<>()).add(whole);
        }
    }

    /** Of several heads that end here the one on the same string, else the one in the same voice, else the first. */
    private Optional<RawNote> before(RawNote note) {
        return open.getOrDefault(note.start, List.of()).stream()
                .filter(head -> !seams.contains(note.start))
                .filter(head -> head.midi == note.midi && head.dead == note.dead)
                .min(Comparator.comparing((RawNote head) -> !isOnSameString(head, note))
                        .thenComparing(head -> head.voice != note.voice));
    }

    private static boolean isOnSameString(RawNote head, RawNote note) {
        return head.string.isPresent() && head.string.equals(note.string);
    }
}
