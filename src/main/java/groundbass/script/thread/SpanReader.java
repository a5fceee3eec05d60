package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Arrivals;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** How many frets a slide, a hammer or a pull goes: "the slide covers five frets". */
final class SpanReader implements Reader {
    private static final int MOST = 24;

    private final Stage stage;

    SpanReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var manner = said.only(Constituent.Played.class).map(Constituent.Played::manner);
        var many = many(said.units());
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small
                        || unit instanceof Constituent.Number
                        || unit instanceof Constituent.Move
                        || unit instanceof Constituent.Played);
        boolean otherwise = said.hasAny(
                Tie.NOT,
                Tie.NO,
                Tie.MAYBE,
                Tie.FROM,
                Tie.SAME,
                Tie.AFTER,
                Tie.BEFORE,
                Tie.STRING,
                Tie.ABOVE,
                Tie.BELOW);
        if (manner.isEmpty() || many.isEmpty() || !plain || otherwise) {
            return Optional.empty();
        }
        var findings = arrivals(manner.get(), said).stream()
                .flatMap(arrival -> span(arrival)
                        .map(span -> Judged.of(span == many.getAsInt(), new Right.CountThere(span), List.of(arrival)))
                        .stream())
                .toList();
        boolean some = findings.stream().anyMatch(Judged::agrees);
        boolean all = findings.stream().allMatch(Judged::agrees);
        return some && !all
                ? Optional.of(Judged.mixed(List.of()))
                : findings.stream().findFirst();
    }

    private static OptionalInt many(List<Constituent> units) {
        for (int i = 0; i < units.size(); i++) {
            if (units.get(i) instanceof Constituent.Move move && !move.strings()) {
                return OptionalInt.of(move.many());
            }
            boolean frets = units.get(i) instanceof Constituent.Number number
                    && number.value() <= MOST
                    && i + 1 < units.size()
                    && PlacedClause.is(units.get(i + 1), Tie.FRET);
            if (frets) {
                return OptionalInt.of(((Constituent.Number) units.get(i)).value());
            }
        }
        return OptionalInt.empty();
    }

    private List<At> arrivals(Manner manner, PlacedClause said) {
        var bars = said.bars().isEmpty() ? stage.allBars() : said.bars();
        return stage
                .notes(stage.stretches(bars, said.scope().time(), said.memory().beat()))
                .stream()
                .filter(at -> Part.manner(manner).fits(at))
                .toList();
    }

    private Optional<Integer> span(At arrival) {
        return Arrivals.source(arrival, stage)
                .filter(source ->
                        Stage.fret(source).isPresent() && Stage.fret(arrival).isPresent())
                .map(source -> Math.abs(
                        Stage.fret(arrival).getAsInt() - Stage.fret(source).getAsInt()));
    }
}
