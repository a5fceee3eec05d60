package groundbass.web.program;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.function.Function;

/**
 * A part of a list: {@code skip} and {@code limit} of the address.
 *
 * @param limit at most {@link #MOST}
 */
record Listing(int skip, int limit) {
    static final int MOST = 200;
    private static final int USUAL = 100;

    static Listing of(Context ctx) {
        return new Listing(number(ctx, "skip", 0, 0, 1_000_000), number(ctx, "limit", USUAL, 1, MOST));
    }

    static int number(Context ctx, String name, int usual, int least, int most) {
        String typed = ctx.queryParam(name);
        if (typed == null) {
            return usual;
        }
        int number = typed.matches("[0-9]{1,7}") ? Integer.parseInt(typed) : -1;
        if (number < least || number > most) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.number", name, least, most);
        }
        return number;
    }

    /**
     * Shows this part, with the way to the next (RFC 8288) where there is more.
     *
     * @param found up to one more than are shown
     */
    <T> void show(Call call, List<T> found, Function<T, Map<String, Object>> view) {
        if (found.size() > limit) {
            String next = call.ctx().path() + "?skip=" + (skip + limit) + "&limit=" + limit;
            call.ctx().header("Link", "<" + next + ">; rel=\"next\"");
        }
        var items = found.stream().limit(limit).map(view).toList();
        Answers.show(call, Members.of("items", items).map());
    }
}
