package groundbass.web.desk.publish;

import groundbass.catalog.ZoneNames;
import groundbass.form.FieldProblem;
import groundbass.publishing.Promise;
import groundbass.text.Message;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.Optional;

/**
 * An hour to promise, as typed.
 *
 * @param local as the browser writes it: {@code 2026-05-04T18:00}
 */
public record Hour(String local, String zone) {
    private static final ZoneId UTC = ZoneId.of("UTC");

    static Hour read(Context ctx) {
        return new Hour(FormParameters.text(ctx, "local"), FormParameters.text(ctx, "zone"));
    }

    /** Empty where nothing or something else was typed. */
    Optional<LocalDateTime> wall() {
        return FormParameters.time(local, LocalDateTime::parse);
    }

    Optional<ZoneId> place() {
        return ZoneNames.read(zone);
    }

    /** What moment it stands for, or why for none; empty while it is not typed. */
    Optional<Message> meaning(Reader reader, Instant now) {
        return wall().flatMap(wall -> place().map(place -> meaning(wall, place, reader, now)));
    }

    private static Message meaning(LocalDateTime wall, ZoneId place, Reader reader, Instant now) {
        var promise = Promise.of(wall, place, now);
        return promise.result()
                .map(kept -> Message.of(
                        "desk.publish.hour.means",
                        reader.in(place).moment(kept.at()),
                        reader.in(UTC).moment(kept.at())))
                .orElseGet(() -> message(promise.problems().get(0)));
    }

    private static Message message(FieldProblem problem) {
        return new Message(problem.key(), problem.args());
    }
}
