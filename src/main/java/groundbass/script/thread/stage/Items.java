package groundbass.script.thread.stage;

import groundbass.score.Fraction;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Gathers units into what is said of one note after another. What has been said of a note already begins the next one;
 * what is said of several in a row is dealt out to them in order.
 */
public final class Items {
    private static final int MOST = 16;
    private static final Set<Tie> LIGHT = Set.of(
            Tie.OF,
            Tie.ON,
            Tie.IN,
            Tie.AT,
            Tie.WITH,
            Tie.NOTE,
            Tie.ONE,
            Tie.HIGH,
            Tie.LOW,
            Tie.AGAIN,
            Tie.COLON,
            Tie.STOP,
            Tie.ASK,
            Tie.SO,
            Tie.BEAT,
            Tie.ONLY,
            Tie.FOR,
            Tie.HOLD,
            Tie.CHORD,
            Tie.THAT,
            Tie.WHICH,
            Tie.STRING,
            Tie.FROM,
            Tie.TO);

    private final Stage stage;
    private final Details details;
    private final List<Bit> all = new ArrayList<>();
    private final List<Item> segment = new ArrayList<>();
    private int many = 1;
    private int counted;
    private Tie register;
    private boolean onward;
    private boolean shared;
    private boolean several;

    private Items(Stage stage) {
        this.stage = stage;
        this.details = new Details(stage);
    }

    /** @param begins whether it cannot be of the note before it */
    private record Bit(Item item, boolean begins) {}

    /** @param items in the order in which they were said */
    public record Row(List<Item> items) {
        public Row {
            items = List.copyOf(items);
        }
    }

    /** Empty where a unit is no part of a note. */
    public static Optional<Row> of(List<Constituent> units, Stage stage) {
        var gathered = new Items(stage);
        for (var unit : units) {
            if (!gathered.take(unit)) {
                return Optional.empty();
            }
        }
        return gathered.row();
    }

    private Optional<Row> row() {
        close();
        boolean empty = all.isEmpty() || all.stream().anyMatch(bit -> bit.item().isEmpty());
        if (empty) {
            return Optional.empty();
        }
        var dealt = dealt().orElseGet(this::merged);
        boolean wrongCount = counted > 1 && dealt.size() != counted;
        return wrongCount ? Optional.empty() : Optional.of(new Row(dealt));
    }

    private boolean take(Constituent unit) {
        if (unit instanceof Constituent.Small small) {
            return tie(small.tie());
        }
        if (unit instanceof Constituent.Count count) {
            many = count.many();
            several = true; // "two dead notes, one pop": what is counted is not of the note before
            return many >= 1 && many <= MOST;
        }
        if (unit instanceof Constituent.KeyNamed key) {
            return ofChord(key.tonic());
        }
        if (unit instanceof Constituent.ChordNamed chord) {
            return ofChord(chord.chord().root());
        }
        if (unit instanceof Constituent.Silence silence) {
            boolean lasting = !segment.isEmpty() && last().kinds().equals(List.of(Part.Kind.LENGTH));
            put(Item.rest(silence.length()));
            return !lasting; // "two beats of rest"
        }
        boolean ofRest = unit instanceof Constituent.Lasting && !segment.isEmpty() && last().rest();
        var parts = ofRest ? Optional.<List<Part>>empty() : details.of(unit).map(told -> registered(unit, told));
        parts.ifPresent(this::add);
        return parts.isPresent();
    }

    /** "The low G". */
    private List<Part> registered(Constituent unit, List<Part> told) {
        boolean named = unit instanceof Constituent.Name && register != null;
        var parts = named
                ? Stream.concat(told.stream(), Stream.of(details.register(register == Tie.HIGH)))
                        .toList()
                : told;
        register = null;
        return parts;
    }

    /** "The third of C": the chord is said with its degree. */
    private boolean ofChord(NoteName root) {
        boolean degree = !segment.isEmpty() && last().has(Part.Kind.DEGREE);
        if (degree) {
            add(List.of(new Part(
                    Part.Kind.CHORD, at -> stage.chord(at.bar(), at.note().onset())
                            .filter(there ->
                                    there instanceof Chord chord && chord.root().pitchClass() == root.pitchClass())
                            .isPresent())));
        }
        return degree;
    }

    private boolean tie(Tie tie) {
        boolean ofOther = tie == Tie.OF && !segment.isEmpty() && last().has(Part.Kind.OCTAVE);
        if (ofOther) { // "the octave of your thumb note"
            return false;
        }
        register = tie == Tie.HIGH || tie == Tie.LOW ? tie : null;
        switch (tie) {
            case COMMA, AND, BUT, COLON -> close();
            case THEN -> {
                close();
                onward = true;
            }
            case BOTH, ALL, EACH -> {
                shared = true;
                return !all.isEmpty() || !segment.isEmpty();
            }
            case ON ->
                shared |= segment.size() > 1
                        && segment.stream().allMatch(item -> item.kinds().equals(List.of(Part.Kind.LENGTH)));
            case NOTE -> {
                if (many > 1) {
                    counted = many;
                    many = 1;
                }
            }
            case LONG -> {
                return !segment.isEmpty() && last().has(Part.Kind.LENGTH);
            }
            case THUMB -> add(List.of(Part.manner(Manner.THUMB)));
            case FINGERS -> add(List.of(Part.manner(Manner.PLUCK)));
            default -> {
                return LIGHT.contains(tie);
            }
        }
        return true;
    }

    private void add(List<Part> parts) {
        var more = new Item(parts, false, Optional.<Fraction>empty());
        if (shared && (!segment.isEmpty() || !all.isEmpty())) {
            share(more);
            return;
        }
        boolean clash = !segment.isEmpty()
                && (many > 1 || last().rest() || parts.stream().anyMatch(part -> last().has(part.kind())));
        if (segment.isEmpty() || clash) {
            put(more);
        } else {
            segment.set(segment.size() - 1, last().with(more));
        }
    }

    private void share(Item more) {
        segment.replaceAll(item -> item.rest() ? item : item.with(more));
        if (segment.isEmpty()) {
            all.replaceAll(bit -> bit.item().rest() ? bit : new Bit(bit.item().with(more), bit.begins()));
        }
    }

    private void put(Item item) {
        for (int i = 0; i < many; i++) {
            segment.add(item);
        }
        several |= many > 1;
        many = 1;
    }

    private Item last() {
        return segment.get(segment.size() - 1);
    }

    /** What stands between two ties. */
    private void close() {
        boolean begins = onward || several || segment.size() > 1;
        segment.forEach(item -> all.add(new Bit(item, begins)));
        if (!segment.isEmpty()) {
            onward = false;
        }
        several = false;
        shared = false;
        segment.clear();
    }

    /** "D and E, fifth and seventh": what comes in rows of the same length is said of the same notes. */
    private Optional<List<Item>> dealt() {
        for (int row = 2; row * 2 <= all.size(); row++) {
            if (all.size() % row == 0 && isDealt(row)) {
                int size = row;
                return Optional.of(
                        IntStream.range(0, row).mapToObj(i -> column(i, size)).toList());
            }
        }
        return Optional.empty();
    }

    private Item column(int first, int row) {
        var item = all.get(first).item();
        for (int i = first + row; i < all.size(); i += row) {
            item = item.with(all.get(i).item());
        }
        return item;
    }

    private boolean isDealt(int row) {
        var kinds = new ArrayList<Part.Kind>();
        for (int start = 0; start < all.size(); start += row) {
            var bits = all.subList(start, start + row);
            boolean whole = start == 0 ? isAlike(bits) : isLed(bits);
            if (!whole || bits.stream().anyMatch(bit -> !isOther(bit.item(), kinds))) {
                return false;
            }
            bits.forEach(bit -> kinds.addAll(bit.item().kinds()));
        }
        return true;
    }

    /** Whether all that is said of the last is said of each; more may be said of the first, such as the string of all. */
    private static boolean isLed(List<Bit> bits) {
        return bits.get(bits.size() - 1).item().kinds().stream()
                .allMatch(kind -> kind == Part.Kind.STRING
                        || bits.stream().allMatch(bit -> bit.item().has(kind)));
    }

    private static boolean isOther(Item item, List<Part.Kind> kinds) {
        return !item.rest() && kinds.stream().noneMatch(item::has);
    }

    private static boolean isAlike(List<Bit> some) {
        return some.stream()
                .allMatch(bit -> !bit.item().rest()
                        && bit.item().kinds().equals(some.get(0).item().kinds()));
    }

    /** What adds to the note before it, without saying again what was said of it, is of that note. */
    private List<Item> merged() {
        var items = new ArrayList<Item>();
        for (var bit : all) {
            var item = bit.item();
            boolean adds =
                    !items.isEmpty() && !bit.begins() && !item.rest() && joins(items.get(items.size() - 1), item);
            boolean same = !items.isEmpty()
                    && item.rest()
                    && items.get(items.size() - 1).rest()
                    && !bit.begins()
                    && (item.length().isEmpty()
                            || items.get(items.size() - 1).length().isEmpty()); // "nothing, a rest"
            boolean twice = !items.isEmpty()
                    && !bit.begins()
                    && item.kinds().equals(List.of(Part.Kind.SHORT))
                    && items.get(items.size() - 1).has(Part.Kind.SHORT); // "short, clipped"
            if (adds || same || twice) {
                items.set(items.size() - 1, items.get(items.size() - 1).with(item));
            } else {
                items.add(item);
            }
        }
        return items;
    }

    private static boolean joins(Item before, Item more) {
        return !before.rest()
                && !(before.isHead() && more.isHead())
                && more.kinds().stream().noneMatch(before::has);
    }
}
