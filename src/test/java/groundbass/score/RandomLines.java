package groundbass.score;

import groundbass.score.Arrival.Kind;
import groundbass.score.Ornaments.Bend;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Ornaments.SlideIn;
import groundbass.score.Ornaments.SlideOff;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Ornaments.Trill;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import groundbass.score.Roadmap.Until;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.theory.Quality;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * Valid lines of every kind the score knows, the same line for the same seed. Built as a player counts: each stretch
 * of one beat or two is shared among notes, rests and held sounds.
 */
public final class RandomLines {
    private static final List<Tuning> TUNINGS = List.of(
            Tuning.STANDARD,
            Tuning.STANDARD,
            Tuning.FIVE_STRING,
            Tuning.SIX_STRING,
            Tuning.sounding("G2", "D2", "A1", "D1"),
            Tuning.sounding("F#2", "C#2", "G#1", "D#1"));
    private static final List<Meter> METERS = List.of(
            Meter.COMMON,
            Meter.COMMON,
            Meter.of(3, 4),
            Meter.of(2, 4),
            Meter.of(2, 2),
            Meter.of(5, 4),
            Meter.of(6, 8),
            Meter.of(12, 8),
            Meter.of(7, 8),
            Meter.of(9, 8),
            Meter.of(3, 8),
            new Meter(8, List.of(2, 3)),
            new Meter(8, List.of(3, 2, 2)));
    private static final int[] NODES = {4, 5, 7, 12, 19};

    private final Random random;
    private final Tuning tuning;
    private final List<Draft> drafts = new ArrayList<>();
    private final Map<Integer, Fraction> soundingUntil = new HashMap<>();
    private Technique style;

    private RandomLines(long seed) {
        random = new Random(seed);
        tuning = oneOf(TUNINGS);
        style = oneOf(List.of(Technique.values()));
    }

    /** A line of 1 to 12 bars. */
    public static Line line(long seed) {
        var lines = new RandomLines(seed);
        return lines.make(1 + lines.random.nextInt(12));
    }

    /** A line of so many bars. */
    public static Line line(long seed, int bars) {
        return new RandomLines(seed).make(bars);
    }

    /** A bar whose notes may still grow. */
    private static final class Draft {
        final Meter meter;
        final Fraction start;
        final Fraction from;
        final Fraction to;
        Changes changes = Changes.NONE;
        Repeats repeats = Repeats.NONE;
        final List<Note> notes = new ArrayList<>();
        final List<Direction> directions = new ArrayList<>();
        final List<ChordAt> chords = new ArrayList<>();
        Optional<Copy> copy = Optional.empty();

        Draft(Meter meter, Fraction start, Fraction from, Fraction to) {
            this.meter = meter;
            this.start = start;
            this.from = from;
            this.to = to;
        }

        Fraction absolute(Fraction at) {
            return start.plus(at).minus(from);
        }

        Fraction end() {
            return absolute(to);
        }

        Bar toBar() {
            return new Bar(from, to, changes, repeats, chords, notes, directions, copy);
        }
    }

    private Line make(int count) {
        var header = header();
        var meter = header.meter();
        var signs = signs(count);
        var start = Fraction.ZERO;
        for (int i = 0; i < count; i++) {
            var changes = i == 0 ? Changes.NONE : changes(meter);
            meter = changes.meter().orElse(meter);
            style = changes.style().orElse(style);
            var draft = draft(i, count, meter, start);
            draft.changes = changes;
            draft.repeats = signs.get(i);
            if (!copyEarlier(draft)) {
                fill(draft, canBeHeldInto(i, signs));
            }
            chords(draft);
            drafts.add(draft);
            start = draft.end();
        }
        return new Line(header, drafts.stream().map(Draft::toBar).toList());
    }

    private Header header() {
        var meter = oneOf(METERS);
        return new Header(
                oneOf(List.of("", "Harbour Étude", "Étude 3")),
                oneOf(List.of("", "Quay Studio")),
                oneOf(List.of("", "Original")),
                key(),
                meter,
                tempo(meter),
                feel(),
                tuning,
                chance(20) ? 20 : Header.USUAL_FRETS,
                style);
    }

    private Key key() {
        var tonic = new NoteName(oneOf(List.of(Letter.values())), random.nextInt(3) - 1);
        var mode = oneOf(List.of(Mode.values()));
        return Key.isWritable(tonic, mode) ? new Key(tonic, mode) : key();
    }

    private Tempo tempo(Meter meter) {
        return new Tempo(40 + random.nextInt(160), chance(20) ? Fraction.of(1, 4) : meter.pulse());
    }

    private Feel feel() {
        if (chance(60)) {
            return Feel.STRAIGHT;
        }
        var unit = chance(50) ? Swing.EIGHTHS : Swing.SIXTEENTHS;
        return new Feel(Optional.of(new Swing(unit, 2 + random.nextInt(2), 1 + random.nextInt(2))), chance(30));
    }

    private List<Repeats> signs(int count) {
        var signs = new ArrayList<Repeats>();
        while (signs.size() < count) {
            int left = count - signs.size();
            if (left >= 4 && chance(25)) {
                signs.add(Repeats.NONE.withStart());
                signs.add(Repeats.NONE
                        .with(chance(50) ? new Ending(1, 1) : new Ending(1, 2))
                        .withEndingEnd()
                        .with(RepeatEnd.PLAIN));
                int next = signs.get(signs.size() - 1).ending().orElseThrow().lastPass() + 1;
                signs.add(Repeats.NONE.with(new Ending(next, next)).withEndingEnd());
            } else if (left >= 2 && chance(25)) {
                signs.add(Repeats.NONE.withStart());
                signs.add(Repeats.NONE.with(chance(50) ? RepeatEnd.PLAIN : new RepeatEnd(Optional.of(3))));
            } else {
                signs.add(Repeats.NONE);
            }
        }
        return chance(25) ? withJump(signs) : signs;
    }

    /** A jump from the last bar, al fine or al segno, where the repeats allow it. */
    private List<Repeats> withJump(List<Repeats> signs) {
        int last = signs.size() - 1;
        int leads = random.nextInt(last + 1);
        var jumping = new ArrayList<>(signs);
        boolean fine = chance(50);
        var jump = new Jump(fine ? From.CAPO : From.SEGNO, fine ? Until.FINE : Until.END);
        put(jumping, leads, fine ? Roadmap.NONE.withFine() : Roadmap.NONE.withSegno());
        put(jumping, last, jumping.get(last).roadmap().with(jump));
        return Passes.faults(skeleton(jumping)).isEmpty() ? jumping : signs;
    }

    private static void put(List<Repeats> signs, int index, Roadmap roadmap) {
        signs.set(index, signs.get(index).with(roadmap));
    }

    private static List<Bar> skeleton(List<Repeats> signs) {
        return signs.stream().map(Bar.of(Meter.COMMON, List.of())::with).toList();
    }

    private static boolean canBeHeldInto(int index, List<Repeats> signs) {
        return index > 0 && !Passes.isSeam(skeleton(signs), index - 1);
    }

    private Changes changes(Meter meter) {
        var changes = Changes.NONE;
        if (chance(10)) {
            changes = changes.withSection(
                    oneOf(List.of("Turnaround", "Verse", "Out", "Second time through, a little louder")));
        }
        if (chance(5)) {
            changes = changes.with(key());
        }
        if (chance(7)) {
            changes = changes.with(oneOf(METERS));
        }
        if (chance(5)) {
            changes = changes.with(tempo(changes.meter().orElse(meter)));
        }
        if (chance(5)) {
            changes = changes.withSlowingTo(40 + random.nextInt(20));
        }
        if (chance(5)) {
            changes = changes.with(feel());
        }
        if (chance(4)) {
            changes = changes.with(oneOf(List.of(Changes.Fresh.values())));
        }
        return chance(8) ? changes.with(oneOf(List.of(Technique.values()))) : changes;
    }

    private Draft draft(int index, int count, Meter meter, Fraction start) {
        var beats = meter.beatStarts();
        var lastBeat = beats.get(beats.size() - 1);
        if (index == 0 && count > 1 && beats.size() > 1 && chance(20)) {
            return new Draft(meter, start, lastBeat, meter.length());
        }
        boolean isShort = index == count - 1 && beats.size() > 1 && chance(10);
        return new Draft(meter, start, Fraction.ZERO, isShort ? lastBeat : meter.length());
    }

    private void fill(Draft bar, boolean canHold) {
        var at = bar.from;
        boolean holdable = canHold;
        while (at.isBefore(bar.to)) {
            var end = bar.meter.beatEnd(at);
            if (end.isBefore(bar.to) && chance(25)) {
                end = bar.meter.beatEnd(end);
            }
            share(bar, at, end.min(bar.to), holdable);
            at = end;
            holdable = true;
        }
    }

    private void share(Draft bar, Fraction from, Fraction to, boolean holdable) {
        int shares = oneOf(List.of(1, 2, 2, 3, 4, 4, 4, 5, 6, 7, 8));
        var share = to.minus(from).dividedBy(shares);
        var at = from;
        int left = shares;
        while (left > 0) {
            int taken = Math.min(left, chance(70) ? 1 : 1 + random.nextInt(3));
            event(bar, at, share.times(taken), holdable || at.isAfter(from));
            at = at.plus(share.times(taken));
            left -= taken;
        }
    }

    private void event(Draft bar, Fraction at, Fraction length, boolean holdable) {
        int dice = random.nextInt(100);
        if (dice < 12) {
            direct(bar, at, false);
        } else if (dice < 24 && holdable) {
            hold(bar, at, length);
        } else {
            strike(bar, at, length);
        }
    }

    private void hold(Draft bar, Fraction at, Fraction length) {
        var now = bar.absolute(at);
        extend(bar, now, length);
        if (!drafts.isEmpty()) {
            extend(drafts.get(drafts.size() - 1), now, length);
        }
    }

    private void extend(Draft bar, Fraction now, Fraction length) {
        for (int i = 0; i < bar.notes.size(); i++) {
            var note = bar.notes.get(i);
            if (bar.absolute(note.end()).equals(now)) {
                bar.notes.set(i, note.withLength(note.length().plus(length)));
                soundingUntil.put(note.string(), now.plus(length));
            }
        }
    }

    private void strike(Draft bar, Fraction at, Fraction length) {
        var now = bar.absolute(at);
        int wanted = chance(85) ? 1 : 2;
        for (int string = tuning.size(); string >= 1 && wanted > 0; string--) {
            boolean free = !soundingUntil.getOrDefault(string, Fraction.ZERO).isAfter(now);
            if (free && (chance(45) || string == 1)) {
                var until = wanted == 2 && chance(30)
                        ? at.plus(length).max(bar.meter.beatEnd(at)).min(bar.to)
                        : at.plus(length);
                bar.notes.add(note(bar, at, until.minus(at), string));
                soundingUntil.put(string, bar.absolute(until));
                wanted--;
            }
        }
        spread(bar.notes, at);
        direct(bar, at, true);
    }

    /** By what the frets of a chord add up to, so that no other choice changes; a rake that is rolled down is a rake. */
    private static void spread(List<Note> notes, Fraction at) {
        var chord = notes.stream().filter(note -> note.onset().equals(at)).toList();
        int sum = chord.stream()
                .mapToInt(note -> note.place() instanceof Place.Fretted fretted ? fretted.fret() : 0)
                .sum();
        int which = sum % 8;
        boolean raked = chord.stream()
                .anyMatch(note -> note.pluck().filter(Technique.RAKE::equals).isPresent());
        if (chord.size() > 1 && !raked && which < Spread.values().length) {
            notes.replaceAll(note -> chord.contains(note)
                    ? note.withOrnaments(note.ornaments().withSpread(Optional.of(Spread.values()[which])))
                    : note);
        }
    }

    private Note note(Draft bar, Fraction at, Fraction length, int string) {
        if (chance(15)) {
            return new Note(
                    at,
                    length,
                    Place.dead(string),
                    Optional.of(chance(50) ? style : oneOf(List.of(Technique.values()))),
                    Optional.empty(),
                    chance(20) ? Ornaments.NONE.with(Mark.ACCENT) : Ornaments.NONE);
        }
        int fret = random.nextInt(20);
        var before = bar.notes.stream().filter(note -> note.string() == string).reduce((one, two) -> two);
        if (before.isPresent() && before.get().place() instanceof Place.Fretted source && chance(35)) {
            var arrival = arrival(source.fret(), fret);
            if (arrival.isPresent()) {
                Optional<Technique> pluck = chance(20) ? Optional.of(Technique.POP) : Optional.empty();
                return new Note(at, length, Place.of(string, fret), pluck, arrival, Ornaments.NONE);
            }
        }
        var grace = chance(5)
                ? arrival(fret + 1, fret).map(a -> Arrival.from(a.kind(), fret + 1))
                : Optional.<Arrival>empty();
        var technique = chance(60) ? style : oneOf(List.of(Technique.values()));
        var ornaments = ornaments(string, fret);
        int place = ornaments.harmonic().filter(h -> h.touchedFret().isEmpty()).isPresent()
                ? NODES[random.nextInt(NODES.length)]
                : fret;
        return new Note(at, length, Place.of(string, place), Optional.of(technique), grace, ornaments);
    }

    private Optional<Arrival> arrival(int source, int fret) {
        if (source == fret) {
            return Optional.empty();
        }
        boolean slide = source > 0 && fret > 0 && chance(30);
        return Optional.of(Arrival.by(slide ? Kind.SLIDE : source < fret ? Kind.HAMMER : Kind.PULL));
    }

    private Ornaments ornaments(int string, int fret) {
        var ornaments = Ornaments.NONE;
        for (var mark : Mark.values()) {
            if (chance(4)) {
                // every other wave is that of a trill
                ornaments = mark == Mark.VIBRATO && fret % 2 == 0
                        ? ornaments.with(new Trill(1 + fret / 2 % 2))
                        : ornaments.with(mark);
            }
        }
        if (chance(3)) {
            ornaments = ornaments.withoutTrill().with(new Bend(1 + random.nextInt(8), fret % 3 == 0, fret % 2 == 0));
        }
        if (chance(3)) {
            ornaments = ornaments.with(SlideIn.values()[random.nextInt(2)]);
        }
        if (chance(3)) {
            ornaments = ornaments.with(SlideOff.values()[random.nextInt(2)]);
        }
        if (chance(5)) {
            ornaments = ornaments.withFinger(1 + random.nextInt(4));
        }
        if (chance(3)) {
            return ornaments.withoutTrill().with(chance(50) ? Harmonic.NATURAL : Harmonic.touchedAt(fret + 12));
        }
        return chance(5) ? ornaments.withSpelling(otherName(string, fret)) : ornaments;
    }

    private NoteName otherName(int string, int fret) {
        int pitchClass = tuning.midi(new Place.Fretted(string, fret)) % 12;
        return java.util.Arrays.stream(Letter.values())
                .flatMap(letter -> java.util.stream.IntStream.rangeClosed(-2, 2).mapToObj(n -> new NoteName(letter, n)))
                .filter(name -> name.pitchClass() == pitchClass)
                .skip(random.nextInt(3))
                .findFirst()
                .orElseGet(() -> otherName(string, fret));
    }

    private void direct(Draft bar, Fraction at, boolean withNotes) {
        if (withNotes && chance(6)) {
            bar.directions.add(new Direction.Loudness(at, oneOf(List.of(Dynamic.values()))));
        }
        if (chance(3)) {
            bar.directions.add(new Direction.Hairpin(at, oneOf(List.of(Direction.Hairpin.Way.values()))));
        }
        if (chance(3)) {
            bar.directions.add(new Direction.Words(
                    at,
                    oneOf(List.of(
                            "let it breathe",
                            "# quiet",
                            "v. even",
                            "as if the room were empty and nobody had to go"))));
        }
    }

    private void chords(Draft bar) {
        if (bar.copy.isPresent() || chance(40)) {
            return;
        }
        bar.chords.add(new ChordAt(bar.from, chord()));
        if (bar.meter.beats().size() > 1 && chance(30)) {
            var at = bar.meter.beatStarts().get(1);
            if (at.isAfter(bar.from) && at.isBefore(bar.to)) {
                bar.chords.add(new ChordAt(at, chord()));
            }
        }
    }

    private ChordSymbol chord() {
        if (chance(10)) {
            return ChordSymbol.NO_CHORD;
        }
        var root = new NoteName(oneOf(List.of(Letter.values())), random.nextInt(3) - 1);
        Optional<NoteName> bass =
                chance(15) ? Optional.of(NoteName.of(oneOf(List.of(Letter.values())))) : Optional.empty();
        return new ChordSymbol.Chord(root, oneOf(List.of(Quality.values())), bass);
    }

    /** Takes over a whole earlier bar where one fits: same meter, whole, and holding nothing across its ends. */
    private boolean copyEarlier(Draft bar) {
        boolean whole = bar.from.isZero() && bar.to.equals(bar.meter.length());
        if (!whole || !chance(15)) {
            return false;
        }
        for (int i = drafts.size() - 1; i >= 0; i--) {
            var source = drafts.get(i);
            if (source.meter.equals(bar.meter)
                    && source.from.isZero()
                    && isClosed(source)
                    && source.to.equals(bar.to)) {
                bar.notes.addAll(source.notes);
                bar.directions.addAll(source.directions);
                bar.chords.addAll(source.chords);
                bar.copy = Optional.of(Copy.of(i + (drafts.get(0).from.isPositive() ? 0 : 1)));
                bar.notes.forEach(note -> soundingUntil.put(note.string(), bar.absolute(note.end())));
                return true;
            }
        }
        return false;
    }

    private boolean isClosed(Draft source) {
        boolean nothingHeldOut =
                source.notes.stream().noneMatch(note -> note.end().isAfter(source.to));
        boolean nothingHeldIn = drafts.stream()
                .takeWhile(draft -> draft != source)
                .flatMap(draft -> draft.notes.stream().map(note -> draft.absolute(note.end())))
                .noneMatch(end -> end.isAfter(source.start));
        boolean nothingHeldOver = drafts.stream()
                .flatMap(draft -> draft.notes.stream().map(note -> draft.absolute(note.end())))
                .noneMatch(end -> end.isAfter(drafts.get(drafts.size() - 1).end()));
        return nothingHeldOut && nothingHeldIn && nothingHeldOver;
    }

    private <T> T oneOf(List<T> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    private boolean chance(int percent) {
        return random.nextInt(100) < percent;
    }
}
