package groundbass.comparison;

import groundbass.comparison.Change.Difference;
import groundbass.score.Bar;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.Function;

/** In what two bars differ, count by count. */
final class BarDifferences {
    private static final int QUARTERS = 4;

    private final Bar before;
    private final Bar after;
    private final Tuning tuning;
    private final Meter meter;
    private final Map<Fraction, EnumSet<Aspect>> found = new TreeMap<>();

    private BarDifferences(Bar before, Bar after, Tuning tuning, Meter meter) {
        this.before = before;
        this.after = after;
        this.tuning = tuning;
        this.meter = meter;
    }

    /** @param tuning in which both are played, so that the same string and fret is the same pitch */
    static List<Difference> between(Bar before, Bar after, Tuning tuning, Meter meter) {
        var differences = new BarDifferences(before, after, tuning, meter);
        differences.notes();
        differences.words();
        return differences.byCount();
    }

    private void notes() {
        var onsets = new TreeSet<Fraction>();
        before.notes().forEach(note -> onsets.add(note.onset()));
        after.notes().forEach(note -> onsets.add(note.onset()));
        onsets.forEach(onset -> compare(onset, at(before, onset), at(after, onset)));
    }

    private static List<Note> at(Bar bar, Fraction onset) {
        return bar.notes().stream().filter(note -> note.onset().equals(onset)).toList();
    }

    private void compare(Fraction at, List<Note> one, List<Note> other) {
        if (one.equals(other)) {
            return;
        }
        boolean sounding = !one.isEmpty() && !other.isEmpty();
        if (!sounding || differ(one, other, Note::length)) {
            add(at, Aspect.RHYTHM);
        }
        if (sounding && differ(one, other, this::pitch)) {
            add(at, Aspect.PITCH);
        } else if (sounding && differ(one, other, Note::place)) {
            add(at, Aspect.PLACE);
        }
        if (sounding && differ(one, other, note -> List.of(note.pluck(), note.arrival(), note.ornaments()))) {
            add(at, Aspect.TECHNIQUE);
        }
    }

    /** A dead note sounds as its string does. */
    private Object pitch(Note note) {
        var midi = note.midi(tuning);
        return midi.isPresent() ? midi : note.place();
    }

    private static boolean differ(List<Note> one, List<Note> other, Function<Note, ?> of) {
        return !Objects.equals(
                one.stream().map(of).toList(), other.stream().map(of).toList());
    }

    private void words() {
        var times = new TreeSet<Fraction>();
        List.of(before, after).forEach(bar -> {
            bar.chords().forEach(chord -> times.add(chord.at()));
            bar.directions().forEach(direction -> times.add(direction.at()));
        });
        times.stream()
                .filter(at -> !saidAt(before, at).equals(saidAt(after, at)))
                .forEach(at -> add(at, Aspect.WORDS));
    }

    private static List<Object> saidAt(Bar bar, Fraction at) {
        var said = new ArrayList<Object>();
        bar.chords().stream().filter(chord -> chord.at().equals(at)).forEach(said::add);
        bar.directions().stream().filter(direction -> direction.at().equals(at)).forEach(said::add);
        return said;
    }

    private void add(Fraction at, Aspect aspect) {
        found.computeIfAbsent(at, any -> EnumSet.noneOf(Aspect.class)).add(aspect);
    }

    private List<Difference> byCount() {
        var differences = new ArrayList<Difference>();
        if (isSignedOtherwise()) {
            differences.add(new Difference(Optional.empty(), Set.of(Aspect.SIGNS)));
        }
        Map<Integer, EnumSet<Aspect>> counts = new TreeMap<>();
        found.forEach((at, aspects) -> counts.merge(quarters(at), EnumSet.copyOf(aspects), BarDifferences::both));
        counts.forEach((quarters, aspects) -> differences.add(
                new Difference(Optional.of(new Count(quarters / QUARTERS + 1, quarters % QUARTERS)), aspects)));
        return differences;
    }

    private boolean isSignedOtherwise() {
        return !before.changes().equals(after.changes())
                || !before.repeats().equals(after.repeats())
                || !before.from().equals(after.from())
                || !before.to().equals(after.to());
    }

    /** How many quarters of a count have passed, whole ones. */
    private int quarters(Fraction at) {
        var passed = at.dividedBy(meter.count()).times(QUARTERS);
        return Math.toIntExact(passed.numerator() / passed.denominator());
    }

    private static EnumSet<Aspect> both(EnumSet<Aspect> one, EnumSet<Aspect> other) {
        var all = EnumSet.copyOf(one);
        all.addAll(other);
        return all;
    }
}
