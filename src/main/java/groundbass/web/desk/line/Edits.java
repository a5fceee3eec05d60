package groundbass.web.desk.line;

import groundbass.linetext.edit.Edit;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.function.Function;

/** Reads which change of a text the page's script asks for; empty where it is none. */
final class Edits {
    private final Context ctx;

    private Edits(Context ctx) {
        this.ctx = ctx;
    }

    static Optional<Edit> read(Context ctx) {
        return new Edits(ctx).edit();
    }

    private Optional<Edit> edit() {
        int bar = FormParameters.number(ctx, "bar", -1);
        return switch (FormParameters.text(ctx, "edit")) {
            case "events" -> at(count -> new Edit.Events(bar, count, FormParameters.text(ctx, "events")));
            case "step" -> at(count -> new Edit.Step(bar, count, step(), FormParameters.text(ctx, "events")));
            case "add-count" -> at(count -> new Edit.AddCount(bar, count));
            case "remove-count" -> at(count -> new Edit.RemoveCount(bar, count));
            case "add-bar" -> Optional.of(new Edit.AddBar(bar));
            case "delete-bar" -> Optional.of(new Edit.DeleteBar(bar));
            case "chords" -> Optional.of(new Edit.Chords(bar, FormParameters.text(ctx, "chords")));
            case "setting" ->
                Optional.of(new Edit.Setting(FormParameters.text(ctx, "name"), FormParameters.text(ctx, "value")));
            default -> Optional.empty();
        };
    }

    private Optional<Edit> at(Function<Count, Edit> make) {
        return Count.parse(FormParameters.text(ctx, "at")).map(make);
    }

    /** So many quarters of a count. */
    private Fraction step() {
        int quarters = Math.max(1, FormParameters.number(ctx, "step", 1));
        int unit = Math.max(1, FormParameters.number(ctx, "unit", 4));
        return Fraction.of(quarters, 4L * unit);
    }
}
