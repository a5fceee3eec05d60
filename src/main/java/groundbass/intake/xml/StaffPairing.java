package groundbass.intake.xml;

import groundbass.intake.notice.NoticeList;
import groundbass.text.Message;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;

/**
 * Notation and tablature of one part say the same notes twice: each number is joined with its notehead. Where they differ,
 * by octaves or lengths, they are joined as far as they agree, and what only the tablature has is a note as well.
 */
final class StaffPairing {
    private final Set<Integer> tablatures;
    private final NoticeList notices;
    private final Map<Integer, Integer> ranks = new HashMap<>();

    private StaffPairing(Set<Integer> tablatures, NoticeList notices) {
        this.tablatures = tablatures;
        this.notices = notices;
    }

    static List<RawNote> of(List<RawNote> notes, Set<Integer> tablatures, NoticeList notices) {
        boolean both = notes.stream()
                        .map(note -> tablatures.contains(note.staff))
                        .distinct()
                        .count()
                > 1;
        return both ? new StaffPairing(tablatures, notices).pair(notes) : notes;
    }

    private List<RawNote> pair(List<RawNote> notes) {
        rank(notes);
        var heads = new LinkedHashSet<RawNote>();
        var numbers = new LinkedHashSet<RawNote>();
        notes.forEach(note -> (tablatures.contains(note.staff) ? numbers : heads).add(note));
        var alone = new HashSet<>(heads);
        pair(
                alone,
                heads,
                numbers,
                note -> List.of(note.grace, note.start, note.end, note.midi, ranks.get(note.voice)));
        pair(alone, heads, numbers, note -> List.of(note.grace, note.start, note.midi));
        pair(alone, heads, numbers, note -> List.of(note.grace, note.start, note.midi % 12));
        numbers.forEach(number -> notices.changed(number.bar, Message.of("intake.changed.tablature")));
        var all = new ArrayList<>(heads);
        all.addAll(numbers);
        return all;
    }

    /** Which of its staff's voices a voice is. */
    private void rank(List<RawNote> notes) {
        var seen = new HashMap<Integer, Integer>();
        for (var note : notes) {
            ranks.computeIfAbsent(note.voice, voice -> seen.merge(note.staff, 1, Integer::sum));
        }
    }

    private static void pair(
            Set<RawNote> alone, Set<RawNote> heads, Set<RawNote> numbers, Function<RawNote, Object> key) {
        Map<Object, Deque<RawNote>> waiting = new HashMap<>();
        heads.stream().filter(alone::contains).forEach(head -> waiting.computeIfAbsent(
                        key.apply(head), each -> new ArrayDeque<>())
                .add(head));
        numbers.removeIf(number -> {
            var head =
                    waiting.getOrDefault(key.apply(number), new ArrayDeque<>()).poll();
            if (head == null) {
                return false;
            }
            alone.remove(head);
            head.add(number);
            return true;
        });
    }
}
