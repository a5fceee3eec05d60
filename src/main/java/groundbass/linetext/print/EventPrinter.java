package groundbass.linetext.print;

import groundbass.linetext.assemble.PlaceResolver;
import groundbass.linetext.print.BarLayout.Group;
import groundbass.linetext.print.BarLayout.Row;
import groundbass.linetext.print.BarLayout.Slot;
import groundbass.linetext.source.Moment;
import groundbass.score.Bar;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Technique;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/** Writes the events of one bar. */
final class EventPrinter {
    private final Bar bar;
    private final Meter meter;
    private final Technique style;
    private final PlaceResolver neck;
    private final Set<Fraction> ends;

    /** @param ends the times at which some sound ends for good: a bare {@code hold} there would carry it on */
    EventPrinter(Bar bar, Meter meter, Technique style, PlaceResolver neck, Set<Fraction> ends) {
        this.bar = bar;
        this.meter = meter;
        this.style = style;
        this.neck = neck;
        this.ends = ends;
    }

    String print(Row row) {
        var share = row.slots().stream()
                .map(slot -> slot.to().minus(slot.from()))
                .reduce(EventPrinter::commonMeasure)
                .orElseThrow();
        return row.slots().stream()
                .map(slot -> print(slot, slot.to().minus(slot.from()).dividedBy(share)))
                .collect(Collectors.joining(", "));
    }

    /** The greatest length that goes into both a whole number of times. */
    private static Fraction commonMeasure(Fraction a, Fraction b) {
        return b.isZero() ? a : commonMeasure(b, a.modulo(b));
    }

    private String print(Slot slot, Fraction shares) {
        String share = shares.equals(Fraction.ONE) ? "" : " for " + shares;
        var items = items(slot);
        int last = items.size() - 1;
        var text = new ArrayList<String>();
        for (int i = 0; i < items.size(); i++) {
            text.add(
                    i == last
                            ? items.get(i).places() + share + items.get(i).words()
                            : items.get(i).toString());
        }
        return String.join(" + ", text) + spread(slot.from()) + directions(slot.from());
    }

    /** Places and the words that all of them have, with a space before them. */
    private record Item(String places, String words) {
        @Override
        public String toString() {
            return places + words;
        }
    }

    private List<Item> items(Slot slot) {
        if (slot.group().isEmpty()) {
            return List.of(new Item("rest", ""));
        }
        var group = slot.group().get();
        if (!slot.strikes()) {
            return held(group.pieces().stream().filter(group::isPlain).toList(), slot.from());
        }
        var carried =
                group.pieces().stream().filter(piece -> piece.note().isEmpty()).toList();
        boolean allPlain = group.pieces().stream().allMatch(group::isPlain);
        if (carried.size() == group.pieces().size() && allPlain) {
            return held(carried, slot.from());
        }
        var items = new ArrayList<Item>();
        carried.forEach(piece -> items.add(new Item(neck.nameOf(piece.string()) + " hold", until(piece, group))));
        items.addAll(played(group));
        return items;
    }

    private List<Item> held(List<SoundInBar> pieces, Fraction at) {
        return ends.contains(at)
                ? pieces.stream()
                        .map(piece -> new Item(neck.nameOf(piece.string()) + " hold", ""))
                        .toList()
                : List.of(new Item("hold", ""));
    }

    /** Places with the same words stand together, those without any last: they would take words that come after. */
    private List<Item> played(Group group) {
        Map<String, List<String>> byWords = new LinkedHashMap<>();
        for (var piece : group.pieces()) {
            piece.note().ifPresent(note -> byWords.computeIfAbsent(
                            WordPrinter.words(note, style) + until(piece, group), words -> new ArrayList<>())
                    .add(neck.print(note.place())));
        }
        if (byWords.isEmpty()) {
            return List.of();
        }
        var items = new ArrayList<Item>();
        var last = byWords.containsKey("") ? "" : List.copyOf(byWords.keySet()).get(byWords.size() - 1);
        byWords.forEach((words, places) -> {
            if (!words.equals(last)) {
                places.forEach(place -> items.add(new Item(place, words)));
            }
        });
        items.add(new Item(String.join("+", byWords.get(last)), last));
        return items;
    }

    private String until(SoundInBar piece, Group group) {
        if (group.isPlain(piece)) {
            return "";
        }
        return " until " + (piece.to().equals(bar.to()) ? "end" : Moment.at(piece.to(), meter));
    }

    private String spread(Fraction at) {
        return bar.notes().stream()
                .filter(note -> note.onset().equals(at))
                .flatMap(note -> note.ornaments().spread().stream())
                .findFirst()
                .map(spread -> " " + spread.words())
                .orElse("");
    }

    private String directions(Fraction at) {
        return bar.directions().stream()
                .filter(direction -> direction.at().equals(at))
                .map(EventPrinter::direction)
                .collect(Collectors.joining());
    }

    private static String direction(Direction direction) {
        if (direction instanceof Direction.Words words) {
            return " \"" + words.text() + "\"";
        }
        return " "
                + (direction instanceof Direction.Hairpin hairpin
                        ? hairpin.way().word()
                        : ((Direction.Loudness) direction).dynamic());
    }
}
