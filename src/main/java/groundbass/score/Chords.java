package groundbass.score;

import groundbass.score.Ornaments.Spread;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Notes that begin together: how they are spread is said of all of them, and of none that begins alone. */
final class Chords {
    private Chords() {}

    /** @param inOrder by onset */
    static List<Note> agreed(List<Note> inOrder) {
        if (inOrder.stream().noneMatch(note -> note.ornaments().spread().isPresent())) {
            return inOrder;
        }
        var agreed = new ArrayList<Note>();
        for (int from = 0, to; from < inOrder.size(); from = to) {
            to = end(inOrder, from);
            agreed.addAll(agreedChord(inOrder.subList(from, to)));
        }
        return List.copyOf(agreed);
    }

    private static int end(List<Note> notes, int from) {
        int to = from + 1;
        while (to < notes.size() && notes.get(to).onset().equals(notes.get(from).onset())) {
            to++;
        }
        return to;
    }

    private static List<Note> agreedChord(List<Note> chord) {
        var spread = chord.size() == 1
                ? Optional.<Spread>empty()
                : chord.stream()
                        .flatMap(note -> note.ornaments().spread().stream())
                        .findFirst();
        return chord.stream()
                .map(note -> note.withOrnaments(note.ornaments().withSpread(spread)))
                .toList();
    }
}
