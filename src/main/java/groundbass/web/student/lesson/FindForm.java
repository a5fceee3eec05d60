package groundbass.web.student.lesson;

import groundbass.document.Level;
import groundbass.form.FieldProblem;
import groundbass.identity.Slug;
import groundbass.release.find.LessonQuery;
import groundbass.release.find.LessonQuery.Order;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is looked for, as the address says it: each field as it was typed, empty where it is open. */
public record FindForm(
        String text,
        String technique,
        String level,
        String key,
        String meter,
        String strings,
        String slowest,
        String fastest,
        String series,
        String order) {
    static final String PATH = "/lessons";
    private static final int LONGEST = 200;
    private static final Pattern NUMBER = Pattern.compile("\\d{1,4}");

    static FindForm of(Context ctx) {
        return new FindForm(
                typed(ctx, "q"),
                typed(ctx, "technique"),
                typed(ctx, "level"),
                typed(ctx, "key"),
                typed(ctx, "meter"),
                typed(ctx, "strings"),
                typed(ctx, "slowest"),
                typed(ctx, "fastest"),
                typed(ctx, "series"),
                typed(ctx, "order"));
    }

    private static String typed(Context ctx, String name) {
        String value =
                Optional.ofNullable(ctx.queryParam(name)).map(String::strip).orElse("");
        return value.substring(0, Math.min(value.length(), LONGEST));
    }

    /** Whether the address says more than it need; a form sends all its fields. */
    static boolean isWordy(Context ctx) {
        return ctx.queryParamMap().values().stream().flatMap(List::stream).anyMatch(String::isBlank);
    }

    /** The shortest address that says the same, to be kept and handed on. */
    String address() {
        Map<String, String> fields = new LinkedHashMap<>();
        fields.put("q", text);
        fields.put("technique", technique);
        fields.put("level", level);
        fields.put("key", key);
        fields.put("meter", meter);
        fields.put("strings", strings);
        fields.put("slowest", slowest);
        fields.put("fastest", fastest);
        fields.put("series", series);
        fields.put("order", order);
        String query = fields.entrySet().stream()
                .filter(field -> !field.getValue().isEmpty())
                .map(field -> field.getKey() + "=" + URLEncoder.encode(field.getValue(), StandardCharsets.UTF_8))
                .collect(Collectors.joining("&"));
        return query.isEmpty() ? PATH : PATH + "?" + query;
    }

    FieldProblems problems() {
        return new FieldProblems(Stream.of(problem("slowest", slowest), problem("fastest", fastest))
                .flatMap(Optional::stream)
                .toList());
    }

    private static Optional<FieldProblem> problem(String field, String typed) {
        return typed.isEmpty() || NUMBER.matcher(typed).matches()
                ? Optional.empty()
                : Optional.of(FieldProblem.of(field, "find.problem.number", typed));
    }

    /**
     * What is no choice is left open.
     *
     * @param groups words of techniques that have one name
     */
    LessonQuery query(Iterable<List<String>> groups) {
        return new LessonQuery(
                LessonQuery.words(text),
                techniques(groups),
                Level.parse(level),
                given(key),
                given(meter),
                number(strings),
                number(slowest),
                number(fastest),
                Slug.parse(series),
                chosenOrder());
    }

    private Set<String> techniques(Iterable<List<String>> groups) {
        for (var group : groups) {
            if (group.contains(technique)) {
                return Set.copyOf(group);
            }
        }
        return Set.of();
    }

    Order chosenOrder() {
        return Stream.of(Order.values())
                .filter(each -> word(each).equals(order))
                .findFirst()
                .orElse(Order.NEWEST);
    }

    static String word(Order order) {
        return order.name().toLowerCase(Locale.ROOT);
    }

    private static Optional<String> given(String typed) {
        return Optional.of(typed).filter(text -> !text.isEmpty());
    }

    private static OptionalInt number(String typed) {
        return NUMBER.matcher(typed).matches() ? OptionalInt.of(Integer.parseInt(typed)) : OptionalInt.empty();
    }
}
