package groundbass.walkthrough.stretch;

import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.writing.Head;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;

/**
 * Strokes that a teacher says in one breath: one stroke, the same one several times, a few that come round again, or
 * plain notes that follow one another on one string. Each stroke is the heads that are struck together, lowest first.
 *
 * @param period how many strokes there are before they come again, all of them where none does
 */
public record Phrase(Kind kind, List<List<Head>> strokes, int period) {
    public enum Kind {
        SINGLE,
        REPEATED,
        ROUND,
        RUN
    }

    /** More strokes than this are not heard as coming round (common practice, no source). */
    private static final int LONGEST_ROUND = 3;

    /** Techniques whose order is a pattern worth naming: down, up, down. */
    private static final Set<Technique> PATTERNED =
            EnumSet.of(Technique.THUMB_DOWN, Technique.THUMB_UP, Technique.INDEX, Technique.MIDDLE);

    public Phrase {
        strokes = List.copyOf(strokes);
    }

    static List<Phrase> of(List<List<Head>> strokes) {
        var phrases = new ArrayList<Phrase>();
        for (int i = 0;
                i < strokes.size();
                i += phrases.get(phrases.size() - 1).strokes().size()) {
            phrases.add(from(strokes.subList(i, strokes.size())));
        }
        return phrases;
    }

    private static Phrase from(List<List<Head>> strokes) {
        int repeated = lead(strokes, Phrase::isAgain);
        if (repeated > 1) {
            return new Phrase(Kind.REPEATED, strokes.subList(0, repeated), 1);
        }
        for (int period = 2; period <= LONGEST_ROUND; period++) {
            int times = rounds(strokes, period);
            if (times > 1 && !isOnePlace(strokes.subList(0, period))) {
                return new Phrase(Kind.ROUND, strokes.subList(0, period * times), period);
            }
        }
        int run = lead(strokes, Phrase::isNext);
        return new Phrase(run > 1 ? Kind.RUN : Kind.SINGLE, strokes.subList(0, run), run);
    }

    /** How often so many strokes are played, one time after the other. */
    private static int rounds(List<List<Head>> strokes, int period) {
        int end = period;
        while (end < strokes.size() && isAgain(strokes.get(end - period), strokes.get(end))) {
            end++;
        }
        return end / period;
    }

    private static boolean isOnePlace(List<List<Head>> strokes) {
        return strokes.stream()
                        .flatMap(List::stream)
                        .map(head -> head.note().place())
                        .distinct()
                        .count()
                == 1;
    }

    /** The strokes before they come again. */
    List<List<Head>> once() {
        return strokes.subList(0, period);
    }

    /** How often they come. */
    int times() {
        return strokes.size() / period;
    }

    private interface Follows {
        boolean test(List<Head> one, List<Head> other);
    }

    /** How many strokes from the first on follow one another in this way. */
    private static int lead(List<List<Head>> strokes, Follows follows) {
        int count = 1;
        while (count < strokes.size() && follows.test(strokes.get(count - 1), strokes.get(count))) {
            count++;
        }
        return count;
    }

    /** Whether both hands do once more what they did, without coming from the note before. */
    public static boolean isAgain(List<Head> one, List<Head> other) {
        return played(one).equals(played(other))
                && one.stream().allMatch(head -> head.note().arrival().isEmpty());
    }

    /** What both hands do, without when. */
    private static List<Object> played(List<Head> heads) {
        return heads.stream()
                .<Object>map(head -> List.of(
                        head.note().place(),
                        head.note().pluck(),
                        head.note().arrival(),
                        head.note().ornaments()))
                .toList();
    }

    /** Along one string; what is not stopped only stays where it is, struck in another way. */
    private static boolean isNext(List<Head> one, List<Head> other) {
        if (!isPlain(one) || !isPlain(other)) {
            return false;
        }
        boolean pattern = isPattern(one) && isPattern(other);
        return isStopped(one) && isStopped(other)
                ? note(one).string() == note(other).string()
                        && (note(one).pluck().equals(note(other).pluck()) || pattern)
                : note(one).place().equals(note(other).place()) && pattern;
    }

    private static boolean isPlain(List<Head> heads) {
        return heads.size() == 1
                && note(heads).arrival().isEmpty()
                && note(heads).ornaments().equals(Ornaments.NONE);
    }

    private static boolean isStopped(List<Head> heads) {
        return note(heads).place() instanceof Fretted fretted && fretted.fret() > 0;
    }

    private static boolean isPattern(List<Head> heads) {
        return note(heads).pluck().filter(PATTERNED::contains).isPresent();
    }

    private static Note note(List<Head> heads) {
        return heads.get(0).note();
    }
}
