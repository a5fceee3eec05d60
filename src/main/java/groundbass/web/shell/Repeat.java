package groundbass.web.shell;

import groundbass.web.view.WaitView;
import groundbass.web.view.WaitView.Field;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** What a request that was refused for a while has to send again, when it is asked for anew. */
final class Repeat {
    /** Typed by hand each time: a page that holds them could be opened again by somebody else. */
    private static final Set<String> SECRET = Set.of("password", "present", "known", "chosen", "code", "factor");

    private Repeat() {}

    static WaitView of(Context ctx, int status, long seconds) {
        var typed = typed(ctx);
        var fields = typed.entrySet().stream()
                .filter(entry -> !SECRET.contains(entry.getKey()))
                .flatMap(entry -> entry.getValue().stream().map(value -> new Field(entry.getKey(), value)))
                .toList();
        var secrets = typed.keySet().stream().filter(SECRET::contains).sorted().toList();
        boolean form = ctx.method().equals(HandlerType.POST);
        return WaitView.of(status, seconds, address(ctx), form, fields, secrets);
    }

    private static String address(Context ctx) {
        return ctx.queryString() == null ? ctx.path() : ctx.path() + "?" + ctx.queryString();
    }

    /** A body that cannot be read has nothing in it that could be kept. */
    private static Map<String, List<String>> typed(Context ctx) {
        try {
            return ctx.method().equals(HandlerType.POST) ? ctx.formParamMap() : Map.of();
        } catch (RuntimeException e) {
            return Map.of();
        }
    }
}
