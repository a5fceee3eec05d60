package groundbass.web.desk.line;

import groundbass.linetext.edit.Edit;
import groundbass.score.Count;
import groundbass.score.Fraction;
import groundbass.score.Shift;
import groundbass.score.Technique;
import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

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
            case "repeat" -> Optional.of(new Edit.Repeat(bar, last(bar)));
            case "paste" ->
                Optional.of(new Edit.Paste(
                        FormParameters.number(ctx, "after", -1),
                        FormParameters.text(ctx, "source").replace("\r\n", "\n"),
                        bar,
                        last(bar)));
            case "move" -> shift().map(by -> new Edit.Move(bar, last(bar), by));
            case "exchange" ->
                technique("struck")
                        .flatMap(from -> technique("becomes").map(to -> new Edit.Exchange(bar, last(bar), from, to)));
            case "take-over" -> Optional.of(new Edit.TakeOver(bar, FormParameters.text(ctx, "from")));
            case "chords" -> Optional.of(new Edit.Chords(bar, FormParameters.text(ctx, "chords")));
            case "setting" ->
                Optional.of(new Edit.Setting(FormParameters.text(ctx, "name"), FormParameters.text(ctx, "value")));
            default -> Optional.empty();
        };
    }

    private Optional<Edit> at(Function<Count, Edit> make) {
        return Count.parse(FormParameters.text(ctx, "at")).map(make);
    }

    /** The last of several bars; without one the bar stands alone. */
    private int last(int bar) {
        return FormParameters.number(ctx, "last", bar);
    }

    private Optional<Shift> shift() {
        return Shift.of(signed("strings"), signed("frets"));
    }

    private Optional<Technique> technique(String name) {
        String word = FormParameters.text(ctx, name);
        return Stream.of(Technique.values())
                .filter(one -> one.word().equals(word))
                .findFirst();
    }

    private int signed(String name) {
        String text = FormParameters.text(ctx, name).strip();
        return text.matches("-?[0-9]{1,3}") ? Integer.parseInt(text) : 0;
    }

    /** So many quarters of a count. */
    private Fraction step() {
        int quarters = Math.max(1, FormParameters.number(ctx, "step", 1));
        int unit = Math.max(1, FormParameters.number(ctx, "unit", 4));
        return Fraction.of(quarters, 4L * unit);
    }
}
