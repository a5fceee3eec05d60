package groundbass.intake.smf;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * Tells grace notes from the others: a stroke of less than a tenth of a quarter that a longer one, of another pitch but
 * within an octave, takes over at once (common practice, no source). A written note of that length would be shorter than a
 * thirty-second. Of two such strokes before a note the first is left out, since a line has one grace note there; more of
 * them, one after the other, are a run of notes.
 *
 * @param before the grace note of each note that has one
 * @param left grace notes that a line has no place for
 */
record GraceFinder(List<Smf.Note> notes, Map<Smf.Note, Smf.Note> before, List<Smf.Note> left) {
    private static final int SHARE = 10;
    private static final int OCTAVE = 12;
    private static final long SLACK = 2;

    /** @param played in the order in which they begin */
    static GraceFinder of(List<Smf.Note> played, int perQuarter) {
        return new Gathering(played, perQuarter).graces();
    }

    /** Which short note runs into which note. Mutable; one for a part. */
    private static final class Gathering {
        private final List<Smf.Note> played;
        private final int perQuarter;

        /** The index of the short note that one runs into. */
        private final Map<Integer, Integer> intoShort = new HashMap<>();

        /** How many short ones run into a short one, one after the other. */
        private final Map<Integer, Integer> behind = new HashMap<>();

        private final Map<Smf.Note, Smf.Note> before = new HashMap<>();
        private final Map<Integer, Smf.Note> graces = new HashMap<>();

        private Gathering(List<Smf.Note> played, int perQuarter) {
            this.played = played;
            this.perQuarter = perQuarter;
        }

        private GraceFinder graces() {
            for (int i = 0; i < played.size(); i++) {
                if (isShort(played.get(i))) {
                    follow(i);
                }
            }
            for (int i = 0; i < played.size(); i++) {
                if (isShort(played.get(i)) && !intoShort.containsKey(i) && behind.getOrDefault(i, 0) < 2) {
                    join(i);
                }
            }
            return sorted();
        }

        private void follow(int index) {
            taking(index, this::isShort).ifPresent(next -> {
                intoShort.put(index, next);
                behind.merge(next, behind.getOrDefault(index, 0) + 1, Math::max);
            });
        }

        private void join(int index) {
            taking(index, next -> !isShort(next) && !before.containsKey(next)).ifPresent(next -> {
                before.put(played.get(next), played.get(index));
                graces.put(index, played.get(index));
            });
        }

        private GraceFinder sorted() {
            var notes = new ArrayList<Smf.Note>();
            var left = new ArrayList<Smf.Note>();
            for (int i = 0; i < played.size(); i++) {
                boolean leads = Optional.ofNullable(intoShort.get(i))
                        .filter(graces::containsKey)
                        .isPresent();
                if (leads) {
                    left.add(played.get(i));
                } else if (!graces.containsKey(i)) {
                    notes.add(played.get(i));
                }
            }
            return new GraceFinder(notes, before, left);
        }

        private boolean isShort(Smf.Note note) {
            return (note.off() - note.on()) * SHARE < perQuarter;
        }

        /** The first of those that take a note over and are wanted. */
        private Optional<Integer> taking(int index, Predicate<Smf.Note> wanted) {
            var note = played.get(index);
            int from = Math.max(index + 1, firstAt(note.off() - SLACK));
            for (int i = from; i < played.size() && played.get(i).on() <= note.off() + SLACK; i++) {
                var next = played.get(i);
                int step = Math.abs(next.key() - note.key());
                if (step > 0 && step < OCTAVE && wanted.test(next)) {
                    return Optional.of(i);
                }
            }
            return Optional.empty();
        }

        /** The index of the first that begins at a tick or later. */
        private int firstAt(long tick) {
            int low = 0;
            int high = played.size();
            while (low < high) {
                int middle = (low + high) / 2;
                boolean later = played.get(middle).on() >= tick;
                low = later ? low : middle + 1;
                high = later ? middle : high;
            }
            return low;
        }
    }
}
