package groundbass.script.thread;

import groundbass.score.Place.Fretted;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Details;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What a place of the neck is called, whatever the line does: "the third fret of the A string is a C". */
final class NeckReader implements Reader {
    private static final Set<Class<? extends Constituent>> KINDS =
            Set.of(Constituent.Name.class, Constituent.Place.class);
    private static final Set<Tie> TIES =
            Set.of(Tie.BE, Tie.ON, Tie.OF, Tie.IN, Tie.AT, Tie.SO, Tie.AND, Tie.COMMA, Tie.STOP, Tie.AGAIN);

    private final Stage stage;

    NeckReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var name = said.only(Constituent.Name.class);
        var place = said.only(Constituent.Place.class);
        boolean here = said.scope().isSaid() || said.scope().time().isPresent();
        boolean plain = said.isOnly(KINDS, TIES)
                && said.has(Tie.BE)
                && !here
                && said.units().get(0) instanceof Constituent.Place;
        if (!plain || name.isEmpty() || place.isEmpty() || place.get().fret().isEmpty()) {
            return Optional.empty();
        }
        int fret = place.get().fret().getAsInt();
        var string = Details.string(place.get(), stage);
        if (string.isEmpty() || fret > Fretted.MOST_FRETS) {
            return Optional.empty();
        }
        var fretted = new Fretted(string.getAsInt(), fret);
        return Optional.of(Judged.of(
                stage.neck().isCalled(fretted, name.get().name()),
                stage.neck().right(fretted, name.get().name()),
                List.of()));
    }
}
