package groundbass.script.thread.stage;

import groundbass.score.Fraction;
import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import groundbass.script.checking.Neck;
import groundbass.script.checking.Places;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;

/** The line, asked what happens where: the stretches that a scope means, and the events in them. Not thread-safe. */
public final class Stage {
    private final Timeline timeline;
    private final Neck neck;
    private final Places places;
    private final boolean byBeats;
    /** A talk comes back to the same few stretches again and again. */
    private final Map<Stretch, List<Together>> known = new HashMap<>();

    /** @param byBeats whether beats are those of the meter, where others speak of counts */
    public Stage(Timeline timeline, boolean byBeats) {
        this.timeline = timeline;
        this.byBeats = byBeats;
        this.neck = new Neck(timeline);
        this.places = new Places(timeline);
    }

    public Timeline timeline() {
        return timeline;
    }

    public Neck neck() {
        return neck;
    }

    public Tuning tuning() {
        return timeline.line().header().tuning();
    }

    public List<Integer> allBars() {
        return IntStream.rangeClosed(timeline.line().firstNumber(), timeline.lastBar())
                .boxed()
                .toList();
    }

    /** The bars at the start of the line, which a pickup is none of, or at its end; none where there are not so many. */
    public List<Integer> bars(Constituent.BarsAtEdge edge) {
        int first = edge.last()
                ? timeline.lastBar() - edge.many() + 1
                : Math.max(1, timeline.line().firstNumber());
        int last = first + edge.many() - 1;
        boolean there = timeline.has(first) && timeline.has(last);
        return there ? IntStream.rangeClosed(first, last).boxed().toList() : List.of();
    }

    /** The stretches of a scope, bar by bar; empty where a bar has no such time. Beats of compound bars are counts. */
    public List<Stretch> stretches(List<Integer> bars, Optional<Scope.Time> time, OptionalInt beatInHand) {
        var all = new ArrayList<Stretch>();
        for (int bar : bars) {
            var here = timeline.has(bar) ? stretches(bar, time, beatInHand) : List.<Stretch>of();
            if (here.isEmpty()) {
                return List.of();
            }
            all.addAll(here);
        }
        return all;
    }

    private List<Stretch> stretches(int bar, Optional<Scope.Time> time, OptionalInt beatInHand) {
        var whole = timeline.whole(bar);
        if (time.isEmpty()) {
            return List.of(whole);
        }
        if (time.get() instanceof Scope.Half half) {
            var middle = whole.from().plus(whole.to()).dividedBy(2);
            return List.of(
                    half.nth() == 1 ? new Stretch(bar, whole.from(), middle) : new Stretch(bar, middle, whole.to()));
        }
        var beats = beats(bar);
        if (time.get() instanceof Scope.Beats said) {
            boolean known = said.numbers().stream().allMatch(number -> number >= 1 && number <= beats.size());
            return known
                    ? said.numbers().stream()
                            .map(number -> beats.get(number - 1))
                            .toList()
                    : List.of();
        }
        if (time.get() instanceof Scope.Onward onward) {
            return onward.from() >= 1 && onward.from() <= beats.size() ? onward(onward, beats) : List.of();
        }
        if (time.get() instanceof Scope.Parts parts) {
            int beat = parts.beat().orElse(beatInHand.orElse(0));
            return beat >= 1 && beat <= beats.size() ? parts(beats.get(beat - 1), parts.parts()) : List.of();
        }
        int many = time.get() instanceof Scope.LastBeats last ? last.many() : 0;
        return many >= 1 && many <= beats.size() ? beats.subList(beats.size() - many, beats.size()) : List.of();
    }

    private static List<Stretch> onward(Scope.Onward onward, List<Stretch> beats) {
        var rest = new ArrayList<>(beats.subList(onward.from() - 1, beats.size()));
        var first = rest.get(0);
        if (onward.part() > 0) {
            var part = parts(first, List.of(onward.part())).get(0);
            rest.set(0, new Stretch(first.bar(), part.from(), first.to()));
        }
        return rest;
    }

    /** In compound bars the counts, each lasting to the next beat's start where one speaks of the beat itself. */
    public List<Stretch> beats(int bar) {
        return places.beats(bar, byBeats).stream()
                .filter(beat -> !beat.from().isBefore(timeline.whole(bar).from())
                        || timeline.whole(bar).from().equals(Fraction.ZERO))
                .toList();
    }

    private static List<Stretch> parts(Stretch beat, List<Integer> parts) {
        var quarter = beat.to().minus(beat.from()).dividedBy(4);
        return parts.stream()
                .map(part -> new Stretch(
                        beat.bar(),
                        beat.from().plus(quarter.times(part)),
                        part % 2 == 0
                                ? beat.from().plus(quarter.times(part + 2L))
                                : beat.from().plus(quarter.times(part + 1L))))
                .toList();
    }

    public List<At> notes(List<Stretch> stretches) {
        return timeline.notes(stretches);
    }

    public List<At> notes(int bar) {
        return timeline.notes(List.of(timeline.whole(bar)));
    }

    public List<At> everyNote() {
        return timeline.notes(timeline.everything());
    }

    /** Notes that begin within stretches, by onset, and the silences between them, cut at each stretch's ends. */
    public List<Together> events(List<Stretch> stretches) {
        var all = new ArrayList<Together>();
        stretches.forEach(stretch -> known.computeIfAbsent(stretch, this::inOne).forEach(event -> add(event, all)));
        return all;
    }

    private List<Together> inOne(Stretch stretch) {
        var all = new ArrayList<Together>();
        var at = stretch.from();
        while (at.isBefore(stretch.to())) {
            var next = event(stretch, at);
            if (!next.isRest() || timeline.isSilent(stretch.bar(), at)) {
                add(next, all);
            }
            at = next.to();
        }
        return List.copyOf(all);
    }

    /** Silence that goes on is one. */
    private static void add(Together next, List<Together> all) {
        boolean joins = next.isRest()
                && !all.isEmpty()
                && all.get(all.size() - 1).isRest()
                && all.get(all.size() - 1).bar() == next.bar()
                && all.get(all.size() - 1).to().equals(next.from());
        if (joins) {
            var before = all.remove(all.size() - 1);
            all.add(new Together(next.bar(), before.from(), next.to(), List.of()));
        } else {
            all.add(next);
        }
    }

    /** What begins at a moment: notes until the next thing begins, or silence, or a note still held. */
    private Together event(Stretch stretch, Fraction at) {
        var here = notes(List.of(new Stretch(stretch.bar(), at, stretch.to())));
        var begin = here.stream().filter(note -> note.note().onset().equals(at)).toList();
        var next = here.stream()
                .map(note -> note.note().onset())
                .filter(onset -> onset.isAfter(at))
                .findFirst()
                .orElse(stretch.to());
        var sounds = begin.stream().map(note -> note.note().end()).reduce(at, Fraction::max);
        var end = begin.isEmpty() ? next : sounds.min(next);
        var held = begin.isEmpty() && !timeline.isSilent(stretch.bar(), at)
                ? heldUntil(stretch.bar(), at).min(next)
                : end;
        return new Together(stretch.bar(), at, held.isAfter(at) ? held : next, begin);
    }

    private Fraction heldUntil(int bar, Fraction at) {
        return notes(bar).stream()
                .filter(note -> !note.note().onset().isAfter(at))
                .map(note -> note.note().end())
                .reduce(at, Fraction::max);
    }

    /** The notes of a tuplet's beat. */
    public List<At> tuplet(At first) {
        var meter = timeline.at(first.bar()).meter();
        var beat = meter.beatStart(first.note().onset());
        return notes(List.of(
                new Stretch(first.bar(), beat, meter.beatEnd(first.note().onset()))));
    }

    public Optional<Integer> midi(At at) {
        var midi = at.note().midi(tuning());
        return midi.isPresent() ? Optional.of(midi.getAsInt()) : Optional.empty();
    }

    public static OptionalInt fret(At at) {
        return at.note().place() instanceof Fretted place ? OptionalInt.of(place.fret()) : OptionalInt.empty();
    }

    /** The chord in force at a note; empty where none was written so far. */
    Optional<ChordSymbol> chord(int bar, Fraction at) {
        Optional<ChordSymbol> last = Optional.empty();
        for (int number : allBars()) {
            for (var chord : timeline.line().bar(number).chords()) {
                boolean before = number < bar || (number == bar && !chord.at().isAfter(at));
                last = before ? Optional.of(chord.chord()) : last;
            }
        }
        return last;
    }

    public List<ChordSymbol> chords(int bar) {
        var own = timeline.line().bar(bar).chords().stream()
                .map(chord -> chord.chord())
                .toList();
        return own.isEmpty() ? chord(bar, Fraction.ZERO).stream().toList() : own;
    }
}
