package groundbass.script.thread;

import groundbass.score.Technique;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** With what the whole line is played: "all of it with the fingers, not with a pick". */
final class HandReader implements Reader {
    private static final Set<Technique> OF_FINGERS =
            Set.of(Technique.FINGER, Technique.INDEX, Technique.MIDDLE, Technique.PLUCK, Technique.POP);

    private final Stage stage;

    HandReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean whole = said.scope().extent() == Scope.Extent.WHOLE
                && said.scope().time().isEmpty();
        var told = affirmed(said.units());
        boolean fingers = told.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.FINGERS));
        boolean pick = told.stream()
                .anyMatch(unit -> unit instanceof Constituent.Played played && played.manner() == Manner.PICK);
        boolean plain = said.units().stream()
                .allMatch(unit -> unit instanceof Constituent.Small
                        || unit instanceof Constituent.Played played && played.manner() == Manner.PICK);
        boolean unsure = said.hasAny(Tie.MAYBE, Tie.EXCEPT, Tie.OTHER, Tie.LIKE, Tie.DIFFERENT);
        if (!whole || !plain || unsure || fingers == pick || !said.has(Tie.WITH)) {
            return Optional.empty();
        }
        var struck = stage.everyNote().stream()
                .filter(at -> at.note().pluck().isPresent())
                .toList();
        long so = struck.stream()
                .filter(at -> fingers ? isFingered(at) : Manner.PICK.fits(at.note()))
                .count();
        boolean none = so == 0 && (pick || struck.stream().anyMatch(at -> Manner.PICK.fits(at.note())));
        if (none) {
            return Optional.of(Judged.wrong(new Right.CountThere(0), List.of()));
        }
        return Optional.of(so == struck.size() ? Judged.agrees(List.of()) : Judged.open(List.of()));
    }

    private static boolean isFingered(At at) {
        return at.note().pluck().filter(OF_FINGERS::contains).isPresent();
    }

    /** What stands before a denial. */
    private static List<Constituent> affirmed(List<Constituent> units) {
        var before = new ArrayList<Constituent>();
        for (var unit : units) {
            if (PlacedClause.is(unit, Tie.NOT) || PlacedClause.is(unit, Tie.NO)) {
                return before;
            }
            before.add(unit);
        }
        return before;
    }
}
