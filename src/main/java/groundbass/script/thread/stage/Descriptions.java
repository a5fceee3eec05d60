package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * What a clause says of notes, taken without regard to its other words. What stands between two ties is said of one
 * note, unless it says the same thing twice: then nobody knows what belongs together, and each is taken for itself.
 */
public final class Descriptions {
    private static final Set<Tie> BETWEEN = Set.of(
            Tie.COMMA, Tie.AND, Tie.BUT, Tie.THEN, Tie.TO, Tie.FROM, Tie.AFTER, Tie.SO, Tie.COLON, Tie.STOP, Tie.WITH,
            Tie.WHICH, Tie.OVER, Tie.START);

    private static final Set<Tie> INSIDE =
            Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.WE, Tie.THERE, Tie.COMMA, Tie.IT, Tie.THAT, Tie.THEN);

    /** Words that players use of more than one technique, so that they prove nothing. */
    private static final Set<Manner> LOOSE = Set.of(Manner.GHOST, Manner.HARMONIC, Manner.PLUCK, Manner.ACCENT);

    private final Stage stage;
    private final Details details;
    private final List<Description> all = new ArrayList<>();
    private final List<Description> open = new ArrayList<>();
    private final boolean mixed;
    private final boolean strings;
    private boolean outside;
    private boolean ahead;
    private boolean source;
    private boolean on;

    private Descriptions(List<Constituent> units, Stage stage) {
        this.stage = stage;
        this.details = new Details(stage);
        this.strings = units.stream()
                .anyMatch(unit -> !(unit instanceof Constituent.Small) && !(unit instanceof Constituent.Name));
        this.mixed = units.stream().filter(Constituent.Name.class::isInstance).count() > 1
                && units.stream().filter(Constituent.Place.class::isInstance).count() > 0;
    }

    /**
     * @param unit the first that says something of it
     * @param parts what each unit says, where there are several
     * @param ahead whether the clause only leads there, so that it may be what comes next
     */
    public record Description(Item item, Constituent unit, boolean ahead, List<Description> parts) {
        private static Description one(Item item, Constituent unit, boolean ahead) {
            return new Description(item, unit, ahead, List.of());
        }

        private static Description all(List<Description> parts) {
            var item = parts.stream().map(Description::item).reduce(Item.NOTHING, Item::with);
            return new Description(item, parts.get(0).unit(), parts.get(0).ahead(), List.copyOf(parts));
        }

        public boolean fits(At at) {
            return item.fits(at);
        }

        /** The unit that is not so of the note that is most like what was said. */
        public Constituent wrong(List<At> notes) {
            if (notes.isEmpty()) {
                return unit;
            }
            var nearest = Runs.mostLike(item, notes);
            return parts.stream()
                    .filter(part -> !part.fits(nearest))
                    .map(Description::unit)
                    .findFirst()
                    .orElse(unit);
        }
    }

    public static List<Description> of(List<Constituent> units, Stage stage) {
        var descriptions = new Descriptions(units, stage);
        units.forEach(descriptions::take);
        descriptions.close();
        return List.copyOf(descriptions.all);
    }

    private void take(Constituent unit) {
        outside = isOutside(unit);
        boolean arrives = source && unit instanceof Constituent.Played; // "from the F you slide to fret seven"
        if (arrives) {
            close();
            source = false;
        }
        if (unit instanceof Constituent.Small small) {
            if (BETWEEN.contains(small.tie())) {
                close();
                ahead = small.tie() == Tie.TO;
                source = small.tie() == Tie.FROM;
            }
            on = small.tie() == Tie.ON || on && small.tie() == Tie.THE;
        } else if (!outside && isTold(unit)) {
            parts(unit).ifPresent(parts -> open.add(Description.one(item(parts), unit, ahead)));
            on = false;
        }
    }

    /** "A dead note on the A" may be on the string of that name. */
    private Optional<List<Part>> parts(Constituent unit) {
        var parts = details.of(unit).filter(some -> !some.isEmpty());
        var string = strings && on && unit instanceof Constituent.Name name
                ? stage.tuning().numberOf(name.name())
                : Optional.<Integer>empty();
        return string.isEmpty()
                ? parts
                : parts.map(some -> List.of(new Part(
                        Part.Kind.NAME, at -> some.get(0).fits(at) || at.note().string() == string.get())));
    }

    /** "After the minim there are ...": what something comes after, or between, is not where it comes. */
    private boolean isOutside(Constituent unit) {
        if (PlacedClause.is(unit, Tie.AFTER) || PlacedClause.is(unit, Tie.BETWEEN)) {
            return true;
        }
        if (PlacedClause.is(unit, Tie.IT) || PlacedClause.is(unit, Tie.COMMA)) {
            return false; // "after it you play a C"
        }
        return outside && !(unit instanceof Constituent.Small small && INSIDE.contains(small.tie()));
    }

    /** An octave is far from any note, and how short a note is, is a matter of taste. */
    private static boolean isTold(Constituent unit) {
        boolean loose = unit instanceof Constituent.Played played && LOOSE.contains(played.manner());
        return !loose && !(unit instanceof Constituent.Octaves) && !(unit instanceof Constituent.Short);
    }

    private void close() {
        var kinds = open.stream()
                .flatMap(description -> description.item().kinds().stream())
                .toList();
        boolean one = kinds.stream().distinct().count() == kinds.size();
        if (one && !mixed && !open.isEmpty()) {
            all.add(Description.all(open));
        } else {
            all.addAll(open);
        }
        open.clear();
    }

    private static Item item(List<Part> parts) {
        var item = Item.NOTHING;
        for (var part : parts) {
            item = item.with(part);
        }
        return item;
    }
}
