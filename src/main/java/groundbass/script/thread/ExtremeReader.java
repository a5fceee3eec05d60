package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** The highest and the lowest note, the highest fret, and frets above which nothing lies. */
final class ExtremeReader implements Reader {
    private final Stage stage;

    ExtremeReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean several =
                said.all(Rank.class).stream().filter(ExtremeReader::isExtreme).count() > 1;
        if (said.scope().time().isPresent() || several || said.hasAny(Tie.FROM, Tie.TO)) {
            return Optional.empty();
        }
        boolean ofGroup = said.has(Tie.OF)
                && said.hasAny(Tie.THAT, Tie.THEY, Tie.CLIMB)
                && !said.scope().isSaid();
        if (ofGroup) { // "the top of that run"
            return Optional.empty();
        }
        var rank =
                said.all(Rank.class).stream().filter(ExtremeReader::isExtreme).findFirst();
        if (rank.isPresent()) {
            boolean highest = rank.get().which() == Rank.Which.HIGHEST;
            return said.has(Tie.FRET) && highest ? highestFret(said) : extreme(said, highest);
        }
        return limit(said);
    }

    private static boolean isExtreme(Rank rank) {
        return rank.which() == Rank.Which.HIGHEST || rank.which() == Rank.Which.LOWEST;
    }

    /** "Nowhere above the fifth fret". */
    private Optional<Judged> limit(PlacedClause said) {
        var places = said.all(Constituent.Place.class);
        boolean above = said.has(Tie.NOT) && said.hasAny(Tie.ABOVE, Tie.HIGH, Tie.OVER, Tie.UP) && places.size() == 1;
        boolean fret =
                above && places.get(0).fret().isPresent() && !places.get(0).hasString();
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small || unit instanceof Constituent.Place);
        if (!fret || !plain) {
            return Optional.empty();
        }
        var top = topFret(bars(said));
        return top.map(at -> Judged.of(
                Stage.fret(at).getAsInt() <= places.get(0).fret().getAsInt(),
                Wrongs.note(at, Item.NOTHING, stage),
                List.of()));
    }

    private List<Integer> bars(PlacedClause said) {
        return said.scope().isSaid() ? said.scope().bars() : stage.allBars();
    }

    private Optional<At> topFret(List<Integer> bars) {
        return stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                .filter(at -> Stage.fret(at).isPresent())
                .max(Comparator.comparingInt(at -> Stage.fret(at).getAsInt()));
    }

    private Optional<Judged> highestFret(PlacedClause said) {
        var numbers = said.all(Constituent.Number.class);
        var ranks = said.all(Rank.class).stream()
                .filter(rank -> rank.which() == Rank.Which.NTH)
                .toList();
        int known = numbers.size() + ranks.size();
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small
                        || unit instanceof Rank
                        || unit instanceof Constituent.Number);
        if (known != 1 || !plain || said.has(Tie.NOT)) {
            return Optional.empty();
        }
        int fret = numbers.isEmpty() ? ranks.get(0).nth() : numbers.get(0).value();
        return topFret(bars(said))
                .map(at -> Judged.of(
                        Stage.fret(at).getAsInt() == fret, Wrongs.note(at, Item.NOTHING, stage), List.of(at)));
    }

    private Optional<Judged> extreme(PlacedClause said, boolean highest) {
        var rest = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            boolean idle = unit instanceof Rank
                    || unit instanceof Constituent.Small small
                            && switch (small.tie()) {
                                case BE,
                                        NOTE,
                                        ONE,
                                        THAT,
                                        SO,
                                        AND,
                                        COMMA,
                                        STOP,
                                        IN,
                                        OF,
                                        IT,
                                        WE,
                                        PLAY,
                                        HAVE,
                                        BUT,
                                        THEN,
                                        UP,
                                        ANY,
                                        AT -> true;
                                default -> false;
                            };
            if (!idle) {
                rest.add(unit);
            }
        }
        if (rest.isEmpty() && said.hasAny(Tie.THAT, Tie.IT)) {
            return pointed(said, highest);
        }
        return Items.of(rest, stage)
                .filter(row -> row.items().size() == 1 && !row.items().get(0).rest())
                .flatMap(row -> extreme(row.items().get(0), said, highest));
    }

    /** "That is the lowest note": the one that was spoken of last. */
    private Optional<Judged> pointed(PlacedClause said, boolean highest) {
        var notes = said.memory().notes();
        if (notes.size() != 1 || !said.memory().sure()) {
            return Optional.empty();
        }
        var midi = stage.midi(notes.get(0));
        var sounding =
                new Item(List.of(new Part(Part.Kind.NAME, at -> stage.midi(at).equals(midi))), false, Optional.empty());
        return extreme(sounding, said, highest);
    }

    private Optional<Judged> extreme(Item item, PlacedClause said, boolean highest) {
        if (highest && item.kinds().equals(List.of(Part.Kind.FRET))) {
            return topFret(bars(said)).map(at -> Judged.of(item.fits(at), Wrongs.note(at, item, stage), List.of(at)));
        }
        var whole = extreme(stage.allBars(), highest);
        var near = said.scope().isSaid()
                ? extreme(said.scope().bars(), highest)
                : extreme(said.memory().bars(), highest);
        if (near.isEmpty() && whole.isEmpty()) {
            return Optional.empty();
        }
        if (near.stream().anyMatch(item::fits)) {
            return Optional.of(Judged.agrees(near));
        }
        if (!said.scope().isSaid() && whole.stream().anyMatch(item::fits)) {
            return Optional.of(Judged.agrees(whole));
        }
        var there = said.scope().isSaid() ? near : whole;
        // "the high" may be said of a string or a hand, so a bar in hand that is meant is no ground for an alarm
        return there.isEmpty()
                ? Optional.empty()
                : Optional.of(Judged.wrong(Wrongs.note(there.get(0), item, stage), there));
    }

    private List<At> extreme(List<Integer> bars, boolean highest) {
        var notes = stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                .filter(at -> stage.midi(at).isPresent())
                .toList();
        var by = Comparator.<At>comparingInt(at -> stage.midi(at).orElse(0));
        var most = highest ? notes.stream().max(by) : notes.stream().min(by);
        return most.map(top -> notes.stream()
                        .filter(at -> stage.midi(at).equals(stage.midi(top)))
                        .toList())
                .orElse(List.of());
    }
}
