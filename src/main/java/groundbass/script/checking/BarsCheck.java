package groundbass.script.checking;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.score.Technique;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.claims.Claim;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Checks whether bars are the same: onsets, lengths, places and techniques; fingers and loudness may differ. */
public final class BarsCheck {
    private final Timeline timeline;
    private final Places places;

    public BarsCheck(Timeline timeline) {
        this.timeline = timeline;
        this.places = new Places(timeline);
    }

    /** What must agree of a note; the pitch instead of the place where bars are an octave apart. */
    private record Trait(
            Fraction onset,
            Fraction length,
            Optional<Place> place,
            OptionalInt midi,
            Optional<Technique> pluck,
            Optional<Arrival> arrival) {}

    public Verdict check(Claim.SameBars claim) {
        var bars = claim.bars();
        var as = claim.as();
        boolean known = Stream.concat(bars.stream(), as.stream()).allMatch(timeline::has);
        if (!known) {
            return new Verdict.Contradicts(new Right.LastBar(timeline.lastBar()));
        }
        if (bars.size() != as.size() && as.size() != 1) {
            return Verdict.CANNOT_TELL;
        }
        return IntStream.range(0, bars.size())
                .mapToObj(i -> check(bars.get(i), as.get(as.size() == 1 ? 0 : i), claim.scope()))
                .filter(verdict -> !(verdict instanceof Verdict.Agrees))
                .findFirst()
                .orElse(Verdict.AGREES);
    }

    private Verdict check(int bar, int as, Claim.Scope scope) {
        var different = firstDifference(bar, as, scope);
        if (different.isEmpty()) {
            return Verdict.AGREES;
        }
        if (scope.loosely()) {
            return Verdict.CANNOT_TELL;
        }
        var at = different.get();
        var same = scope.equals(Claim.Scope.ALL) ? sameAs(bar) : Optional.<Integer>empty();
        return new Verdict.Contradicts(
                new Right.BarsDiffer(bar, as, new Position(bar, at), Counts.of(timeline, bar, at), same));
    }

    /** Another bar that is the same as this one, the earliest. */
    private Optional<Integer> sameAs(int bar) {
        return Stream.iterate(timeline.line().firstNumber(), timeline::has, other -> other + 1)
                .filter(other -> other != bar
                        && firstDifference(bar, other, Claim.Scope.ALL).isEmpty())
                .findFirst();
    }

    private Optional<Fraction> firstDifference(int bar, int as, Claim.Scope scope) {
        if (!timeline.at(bar).meter().equals(timeline.at(as).meter())) {
            return Optional.of(Fraction.ZERO);
        }
        var mine = parts(bar, scope.beats(), scope.but());
        var other = scope.besides().isEmpty()
                ? parts(as, scope.beats(), scope.but())
                : parts(as, scope.besides(), List.of());
        for (int i = 0; i < Math.min(mine.size(), other.size()); i++) {
            var here = traits(mine.get(i), scope, true);
            var there = traits(other.get(i), scope, false);
            if (!here.equals(there)) {
                return Optional.of(mine.get(i).from().plus(firstDifference(here, there)));
            }
        }
        return mine.size() == other.size() ? Optional.empty() : Optional.of(Fraction.ZERO);
    }

    private static Fraction firstDifference(List<Trait> here, List<Trait> there) {
        for (int i = 0; i < Math.min(here.size(), there.size()); i++) {
            if (!here.get(i).equals(there.get(i))) {
                return here.get(i).onset().min(there.get(i).onset());
            }
        }
        var longer = here.size() > there.size() ? here : there;
        return longer.get(Math.min(here.size(), there.size())).onset();
    }

    private List<Stretch> parts(int bar, List<Integer> only, List<Integer> but) {
        var beats = places.beats(bar, false);
        var parts = new ArrayList<Stretch>();
        for (int number = 1; number <= beats.size(); number++) {
            if ((only.isEmpty() || only.contains(number)) && !but.contains(number)) {
                parts.add(beats.get(number - 1));
            }
        }
        return parts;
    }

    private List<Trait> traits(Stretch stretch, Claim.Scope scope, boolean moved) {
        return timeline.notes(List.of(stretch)).stream()
                .map(At::note)
                .map(note -> trait(note, note.onset().minus(stretch.from()), scope, moved))
                .toList();
    }

    /** @param moved whether the note is of the bar that is moved; it is told as it would stand unmoved */
    private Trait trait(Note note, Fraction onset, Claim.Scope scope, boolean moved) {
        if (scope.rhythmOnly()) {
            return new Trait(
                    onset, note.length(), Optional.empty(), OptionalInt.empty(), Optional.empty(), Optional.empty());
        }
        if (scope.shift() instanceof Claim.Shift.Semitones semitones) {
            var midi = note.midi(timeline.line().header().tuning());
            int back = moved ? -semitones.up() : 0;
            var sounding = midi.isPresent() ? OptionalInt.of(midi.getAsInt() + back) : midi;
            return new Trait(onset, note.length(), Optional.empty(), sounding, Optional.empty(), Optional.empty());
        }
        return new Trait(
                onset,
                note.length(),
                Optional.of(moved ? unmoved(note.place(), scope.shift()) : note.place()),
                OptionalInt.empty(),
                note.pluck(),
                note.arrival());
    }

    private static Place unmoved(Place place, Claim.Shift shift) {
        if (shift instanceof Claim.Shift.Strings strings) {
            return onString(place, place.string() + strings.higher());
        }
        int frets = shift instanceof Claim.Shift.Frets along ? along.up() : 0;
        return place instanceof Fretted fretted && fretted.fret() >= frets
                ? new Fretted(fretted.string(), Math.min(Fretted.MOST_FRETS, fretted.fret() - frets))
                : place;
    }

    private static Place onString(Place place, int string) {
        if (string < 1) {
            return place;
        }
        return place instanceof Fretted fretted ? new Fretted(string, fretted.fret()) : Place.dead(string);
    }
}
