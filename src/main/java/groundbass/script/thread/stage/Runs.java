package groundbass.script.thread.stage;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/** Finds what was said in a row among what happens in a row. */
public final class Runs {
    private Runs() {}

    /** Index of the first event of the first run that is as said; -1 where there is none. */
    public static int find(List<Item> items, List<Together> events) {
        for (int start = 0; start + items.size() <= events.size(); start++) {
            if (fits(items, events.subList(start, start + items.size()))) {
                return start;
            }
        }
        return -1;
    }

    /**
     * Whether what was said in a row cannot be so, however the words belong together: something of it is so of nothing
     * there, the names come in no such order, or more is said than there is.
     */
    public static boolean isDenied(List<Item> items, List<Together> events) {
        int heard = events.stream()
                .mapToInt(event -> Math.max(1, event.notes().size()))
                .sum();
        boolean missing = items.stream().anyMatch(item -> isMissing(item, events));
        var named = items.stream()
                .flatMap(item -> item.parts().stream())
                .filter(part -> part.kind() == Part.Kind.NAME)
                .toList();
        boolean alike =
                items.stream().allMatch(item -> item.kinds().equals(items.get(0).kinds()));
        return missing || (alike && items.size() > heard) || !isInOrder(named, notes(events));
    }

    /** Whether all that was said is there, and never in that order. */
    public static boolean isTurned(List<Item> items, List<Together> events) {
        return items.size() > 1
                && items.stream().allMatch(item -> events.stream().anyMatch(event -> event.fits(item)))
                && !isScattered(items, events);
    }

    private static boolean isMissing(Item item, List<Together> events) {
        return item.rest()
                ? events.stream().noneMatch(Together::isRest)
                : item.parts().stream().anyMatch(part -> notes(events).stream().noneMatch(part::fits));
    }

    private static boolean isInOrder(List<Part> parts, List<At> notes) {
        int next = 0;
        for (var at : notes) {
            boolean fits = next < parts.size() && parts.get(next).fits(at);
            next += fits ? 1 : 0;
        }
        return next == parts.size();
    }

    /** Whether these come one right after another. */
    public static boolean isRow(List<Part> parts, List<At> notes) {
        for (int start = 0; start + parts.size() <= notes.size(); start++) {
            int from = start;
            boolean all =
                    IntStream.range(0, parts.size()).allMatch(i -> parts.get(i).fits(notes.get(from + i)));
            if (all) {
                return true;
            }
        }
        return false;
    }

    private static boolean fits(List<Item> items, List<Together> events) {
        for (int i = 0; i < items.size(); i++) {
            if (!events.get(i).fits(items.get(i))) {
                return false;
            }
        }
        return true;
    }

    /** Whether all that was said is there in its order, with other things between. */
    public static boolean isScattered(List<Item> items, List<Together> events) {
        int next = 0;
        for (var event : events) {
            if (next < items.size() && event.fits(items.get(next))) {
                next++;
            }
        }
        return next == items.size();
    }

    /** Whether a single thing was said of a stretch in which it is so of some. */
    public static boolean isOneOfMany(List<Item> items, List<Together> events) {
        return items.size() == 1 && events.stream().anyMatch(event -> event.fits(items.get(0)));
    }

    /** The notes of events that are as said; where a triplet was spoken of, all of it. */
    public static List<At> met(List<Item> items, List<Together> events, Stage stage) {
        boolean triplet = items.size() == 1 && items.get(0).has(Part.Kind.TUPLET);
        var notes = notes(events);
        return triplet && !notes.isEmpty() ? stage.tuplet(notes.get(0)) : notes;
    }

    public static List<At> notes(List<Together> events) {
        return events.stream().flatMap(event -> event.notes().stream()).toList();
    }

    /** What is most like a thing that is not there. */
    public static Right nearest(Item item, List<Together> events, Stretch stretch, Stage stage) {
        var notes = notes(events);
        return notes.isEmpty() || item.rest()
                ? Wrongs.start(stretch, item, stage)
                : Wrongs.note(mostLike(item, notes), item, stage);
    }

    /** The first of those of which most is so; there has to be a note. */
    public static At mostLike(Item item, List<At> notes) {
        return notes.stream()
                .max(Comparator.comparingLong((At at) -> item.parts().stream()
                                .filter(part -> part.fits(at))
                                .count())
                        .thenComparing(at -> -notes.indexOf(at)))
                .orElseThrow();
    }
}
