package groundbass.linetext;

import groundbass.linetext.assemble.BarExtent;
import groundbass.linetext.assemble.Copying;
import groundbass.linetext.assemble.PlaceResolver;
import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.ChordAt;
import groundbass.score.Copy;
import groundbass.score.Direction;
import groundbass.score.Dynamic;
import groundbass.score.Feel;
import groundbass.score.Fraction;
import groundbass.score.Grid;
import groundbass.score.Harmonic;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Passes;
import groundbass.score.Place;
import groundbass.score.Repeats;
import groundbass.score.Shift;
import groundbass.score.Swing;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import groundbass.score.Tuning;
import groundbass.score.Tuning.OpenString;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.theory.Quality;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;

/** Valid lines that no player would write: every corner that the constructors let through, the same for a seed. */
public final class WildLines {
    private static final List<String> TEXTS = List.of(
            "a",
            "# b",
            "x  # y",
            "“curly” „low”",
            "é♯♭",
            "end",
            "\uD83C\uDFB8",
            "\uD800",
            "a, b + c * 2 = d",
            "'",
            "\uFEFF");
    private static final int[] DIVISIONS = {1, 2, 3, 4, 5, 6, 7, 8, 9, 12};

    private final Random random;
    private final Tuning tuning;
    private final int frets;
    private final Key home;
    private final Map<Integer, Fraction> busyUntil = new HashMap<>();
    private final Set<Integer> played = new HashSet<>();
    private final List<Bar> bars = new ArrayList<>();
    private final List<Meter> meters = new ArrayList<>();
    private Fraction now = Fraction.ZERO;

    private WildLines(long seed) {
        random = new Random(seed);
        tuning = tuning();
        frets = 1 + random.nextInt(36);
        home = key();
    }

    public static Line line(long seed) {
        return new WildLines(seed).make();
    }

    private Line make() {
        int count = 1 + random.nextInt(8);
        var meter = meter();
        var header = new Header(
                chance(50) ? oneOf(TEXTS) : "",
                "",
                chance(50) ? oneOf(TEXTS) : "",
                home,
                meter,
                tempo(meter),
                feel(),
                tuning,
                frets,
                oneOf(List.of(Technique.values())));
        var signs = signs(count);
        for (int i = 0; i < count; i++) {
            var changes = i == 0 ? Changes.NONE : changes(meter);
            meter = changes.meter().orElse(meter);
            meters.add(meter);
            bars.add(bar(i, count, meter, changes, signs));
            now = now.plus(bars.get(i).length());
        }
        return new Line(header, bars);
    }

    private List<Repeats> signs(int count) {
        var signs = new ArrayList<Repeats>();
        while (signs.size() < count) {
            int left = count - signs.size();
            if (left >= 4 && chance(30)) {
                signs.add(Repeats.NONE.withStart());
                signs.add(Repeats.NONE.with(new Repeats.Ending(1, 2)));
                signs.add(Repeats.NONE.withEndingEnd().with(Repeats.RepeatEnd.PLAIN));
                signs.add(Repeats.NONE.with(new Repeats.Ending(3, 3)).withEndingEnd());
            } else if (chance(20)) {
                signs.add(Repeats.NONE.withStart().with(new Repeats.RepeatEnd(Optional.of(2 + random.nextInt(3)))));
            } else {
                signs.add(Repeats.NONE);
            }
        }
        return signs;
    }

    private Bar bar(int index, int count, Meter meter, Changes changes, List<Repeats> signs) {
        int quarters = 4 * meter.counts();
        var quarter = meter.count().dividedBy(4);
        boolean pickup = index == 0 && chance(30);
        var from = pickup ? quarter.times(1 + random.nextInt(quarters - 1)) : Fraction.ZERO;
        var to = !pickup && chance(20) ? quarter.times(1 + random.nextInt(quarters)) : meter.length();
        var extent =
                new BarExtent(index, meter, Header.PLAIN.key(), from, to, Technique.FINGER, now.minus(from), false);
        boolean open = index + 1 < count && !Passes.isSeam(skeleton(signs), index);
        var copy = index > 0 && chance(45) ? Optional.of(copy()) : Optional.<Copy>empty();
        var base = copy.map(found -> base(found, from, to)).orElse(Copying.NOTHING);
        var grid = new Grid(meter);
        busyUntil.values().stream()
                .filter(now::isBefore)
                .forEach(end -> grid.admit(end.minus(now).plus(from)));
        var notes = new ArrayList<Note>();
        base.notes().stream()
                .filter(note -> grid.admit(note.onset()) && grid.admit(note.end()))
                .filter(note -> !chance(10))
                .map(note -> chance(10) ? note.withOrnaments(ornaments(note.place())) : note)
                .forEach(note -> add(extent, note, notes));
        if (copy.isEmpty() || chance(40)) {
            scatter(extent, grid, open, notes, copy.isPresent() ? 8 : 35);
        }
        var directions = directions(base, times(extent, grid), grid);
        var chords = chords(base, times(extent, grid), grid);
        return new Bar(from, to, changes, signs.get(index), chords, notes, directions, copy);
    }

    private static List<Bar> skeleton(List<Repeats> signs) {
        return signs.stream().map(Bar.of(Meter.COMMON, List.of())::with).toList();
    }

    private Copy copy() {
        int index = random.nextInt(bars.size());
        int number = index + (bars.get(0).isPickup() ? 0 : 1);
        var shift = chance(50) ? Shift.NONE : new Shift(random.nextInt(5) - 2, random.nextInt(9) - 4);
        if (chance(50)) {
            return Copy.of(number).with(shift);
        }
        var starts = meters.get(index).beatStarts();
        var from = oneOf(starts);
        return Copy.of(number, from, meters.get(index).beatEnd(oneOf(starts).max(from)))
                .with(shift);
    }

    private Copying base(Copy copy, Fraction from, Fraction to) {
        var bar = bars.get(copy.bar() - (bars.get(0).isPickup() ? 0 : 1));
        var inside = bar.notes().stream()
                .map(note -> note.withLength(note.end().min(bar.to()).minus(note.onset())))
                .toList();
        var original = new Copying.Original(bar.from(), bar.to(), inside, bar.directions(), bar.chords());
        return Copying.of(original, copy, new Copying.Target(from, to, new PlaceResolver(tuning, frets), home));
    }

    private void add(BarExtent extent, Note note, List<Note> notes) {
        var start = extent.absolute(note.onset());
        boolean free = !busyUntil.getOrDefault(note.string(), Fraction.ZERO).isAfter(start);
        boolean sourced = note.arrival().filter(a -> !a.isGrace()).isEmpty() || played.contains(note.string());
        if (free && sourced && notes.size() < Bar.MOST_NOTES) {
            notes.add(note);
            played.add(note.string());
            busyUntil.put(note.string(), extent.absolute(note.end()));
        }
    }

    private void scatter(BarExtent extent, Grid grid, boolean open, List<Note> notes, int percent) {
        var taken = new ArrayList<>(notes);
        var times = times(extent, grid);
        for (int string = 1; string <= tuning.size(); string++) {
            for (var at : times) {
                int thisString = string;
                var next = taken.stream()
                        .filter(note -> note.string() == thisString)
                        .map(Note::onset)
                        .filter(onset -> !onset.isBefore(at))
                        .min(Fraction::compareTo)
                        .orElse(extent.to());
                if (next.isAfter(at) && chance(percent) && isFree(extent, taken, string, at)) {
                    add(
                            extent,
                            note(string, at, end(times, at, next, open, extent).minus(at)),
                            notes);
                }
            }
        }
    }

    private boolean isFree(BarExtent extent, List<Note> taken, int string, Fraction at) {
        boolean covered = taken.stream()
                .anyMatch(note -> note.string() == string
                        && note.onset().compareTo(at) <= 0
                        && note.end().isAfter(at));
        boolean later = taken.stream()
                .anyMatch(note -> note.string() == string && note.onset().isAfter(at));
        return !covered
                && !later
                && !busyUntil.getOrDefault(string, Fraction.ZERO).isAfter(extent.absolute(at));
    }

    /** The end of a bar that something else follows, or somewhere on a grid of the bar after it. */
    private Fraction end(TreeSet<Fraction> times, Fraction at, Fraction next, boolean open, BarExtent extent) {
        if (open && next.equals(extent.to()) && chance(20)) {
            return extent.to().plus(Fraction.of(1, 64));
        }
        var ends = new ArrayList<>(times.subSet(at, false, next, true));
        ends.add(next);
        return oneOf(ends);
    }

    private TreeSet<Fraction> times(BarExtent extent, Grid grid) {
        var times = new TreeSet<Fraction>();
        for (int turn = 0; turn < 1 + random.nextInt(2); turn++) {
            var step = extent.meter().count().dividedBy(DIVISIONS[random.nextInt(DIVISIONS.length)]);
            var shift = chance(30) ? step.dividedBy(2) : Fraction.ZERO;
            for (var at = shift; at.isBefore(extent.to()); at = at.plus(step)) {
                if (!at.isBefore(extent.from()) && grid.admit(at) && chance(70)) {
                    times.add(at);
                }
            }
        }
        return times;
    }

    private Note note(int string, Fraction at, Fraction length) {
        var technique = oneOf(List.of(Technique.values()));
        if (chance(20)) {
            var ornaments = chance(20) ? Ornaments.NONE.with(new Ornaments.Bend(7)) : Ornaments.NONE;
            return Note.plucked(at, length, Place.dead(string), technique).withOrnaments(ornaments);
        }
        var place = Place.of(string, random.nextInt(frets + 1));
        var kind = oneOf(List.of(Arrival.Kind.values()));
        if (chance(15) && played.contains(string)) {
            Optional<Technique> pluck = chance(50) ? Optional.of(technique) : Optional.empty();
            return new Note(at, length, place, pluck, Optional.of(Arrival.by(kind)), ornaments(place));
        }
        var grace = chance(10) ? Optional.of(Arrival.from(kind, random.nextInt(37))) : Optional.<Arrival>empty();
        return new Note(at, length, place, Optional.of(technique), grace, ornaments(place));
    }

    private Ornaments ornaments(Place place) {
        var ornaments = Ornaments.NONE;
        for (var mark : Ornaments.Mark.values()) {
            ornaments = chance(10) ? ornaments.with(mark) : ornaments;
        }
        ornaments = chance(10) ? ornaments.with(new Ornaments.Bend(1 + random.nextInt(8))) : ornaments;
        ornaments = chance(10) ? ornaments.with(oneOf(List.of(Ornaments.SlideIn.values()))) : ornaments;
        ornaments = chance(10) ? ornaments.with(oneOf(List.of(Ornaments.SlideOff.values()))) : ornaments;
        ornaments = chance(10) ? ornaments.withFinger(1 + random.nextInt(4)) : ornaments;
        if (place instanceof Place.Dead) {
            return ornaments;
        }
        ornaments = chance(10)
                ? ornaments.with(chance(50) ? Harmonic.NATURAL : Harmonic.touchedAt(1 + random.nextInt(60)))
                : ornaments;
        int midi = Note.plucked(Fraction.ZERO, Fraction.ONE, place, Technique.FINGER)
                .withOrnaments(ornaments)
                .midi(tuning)
                .orElseThrow();
        return chance(10) ? ornaments.withSpelling(nameOf(midi)) : ornaments;
    }

    private NoteName nameOf(int midi) {
        return oneOf(java.util.Arrays.stream(Letter.values())
                .flatMap(letter -> IntStream.rangeClosed(-2, 2).mapToObj(n -> new NoteName(letter, n)))
                .filter(name -> name.pitchClass() == midi % 12)
                .toList());
    }

    private List<Direction> directions(Copying base, TreeSet<Fraction> times, Grid grid) {
        var directions = new ArrayList<>(base.directions().stream()
                .filter(d -> !chance(15) && grid.admit(d.at()))
                .toList());
        for (var at : times) {
            if (chance(4) && directions.stream().noneMatch(d -> d.at().equals(at))) {
                directions.add(new Direction.Loudness(at, oneOf(List.of(Dynamic.values()))));
                directions.add(new Direction.Words(at, oneOf(TEXTS)));
                directions.add(new Direction.Hairpin(at, oneOf(List.of(Direction.Hairpin.Way.values()))));
            }
        }
        return directions;
    }

    private List<ChordAt> chords(Copying base, TreeSet<Fraction> times, Grid grid) {
        if (chance(70)) {
            return base.chords().stream()
                    .filter(chord -> grid.admit(chord.at()))
                    .toList();
        }
        return times.stream()
                .filter(at -> chance(10))
                .map(at -> new ChordAt(at, chord()))
                .toList();
    }

    private ChordSymbol chord() {
        Optional<NoteName> bass = chance(30) ? Optional.of(name(2)) : Optional.empty();
        return chance(5)
                ? ChordSymbol.NO_CHORD
                : new ChordSymbol.Chord(name(2), oneOf(List.of(Quality.values())), bass);
    }

    private Changes changes(Meter before) {
        var changes = chance(10) ? Changes.NONE.withSection(oneOf(TEXTS)) : Changes.NONE;
        changes = chance(5) ? changes.with(key()) : changes;
        changes = chance(10) ? changes.with(meter()) : changes;
        changes = chance(10) ? changes.with(tempo(changes.meter().orElse(before))) : changes;
        changes = chance(10) ? changes.withSlowingTo(20 + random.nextInt(300)) : changes;
        changes = chance(10) ? changes.with(feel()) : changes;
        changes = chance(10) ? changes.with(oneOf(List.of(Changes.Fresh.values()))) : changes;
        return chance(10) ? changes.with(oneOf(List.of(Technique.values()))) : changes;
    }

    private Meter meter() {
        var beats = new ArrayList<Integer>();
        do {
            beats.add(1 + random.nextInt(4));
        } while (chance(60) && beats.size() < 7);
        return new Meter(1 << random.nextInt(5), beats);
    }

    private Tempo tempo(Meter meter) {
        var other = Fraction.of(1 + random.nextInt(40), 1L << random.nextInt(7)).min(Fraction.of(32));
        return new Tempo(20 + random.nextInt(381), chance(50) ? meter.pulse() : other);
    }

    private Feel feel() {
        int second = 1 + random.nextInt(4);
        var swing = new Swing(chance(50) ? Swing.EIGHTHS : Swing.SIXTEENTHS, second + random.nextInt(5), second);
        return new Feel(chance(50) ? Optional.of(swing) : Optional.empty(), chance(50));
    }

    private Key key() {
        while (true) {
            var tonic = name(1);
            var mode = oneOf(List.of(Mode.values()));
            if (Key.isWritable(tonic, mode)) {
                return new Key(tonic, mode);
            }
        }
    }

    private Tuning tuning() {
        var strings = new ArrayList<OpenString>();
        int size = 1 + random.nextInt(chance(10) ? 12 : 6);
        while (strings.size() < size) {
            var name = name(2);
            int octave = random.nextInt(6);
            if (OpenString.isOpenPitch(name, octave)) {
                strings.add(new OpenString(chance(30) ? name(2) : name, new Pitch(name, octave)));
            }
        }
        return new Tuning(strings);
    }

    private NoteName name(int most) {
        return new NoteName(oneOf(List.of(Letter.values())), random.nextInt(2 * most + 1) - most);
    }

    private <T> T oneOf(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }
}
