package groundbass.release.find;

import groundbass.document.Level;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jdbi.v3.core.statement.Query;

/** A query as conditions of SQL, every value bound. Words have letters and digits alone, so none is a pattern's sign. */
final class Conditions {
    private static final String LEVELS = Stream.of(Level.values())
            .map(level -> "when '" + level.code() + "' then " + level.ordinal())
            .collect(Collectors.joining(" ", "case e.level ", " end"));

    private final List<String> all = new ArrayList<>(List.of("e.published_at is not null", "e.withdrawn_at is null"));
    private final Map<String, Object> values = new LinkedHashMap<>();
    private final String order;

    Conditions(LessonQuery query) {
        query.words().forEach(word -> and(like("t.words", "% " + word + "%")));
        if (!query.techniques().isEmpty()) {
            and(query.techniques().stream()
                    .sorted()
                    .map(word -> like("t.techniques", "% " + word + " %"))
                    .collect(Collectors.joining(" or ", "(", ")")));
        }
        query.level().ifPresent(level -> and("e.level = :level", "level", level));
        query.key().ifPresent(key -> and("t.key_name = :key", "key", key));
        query.meter().ifPresent(meter -> and("t.meter = :meter", "meter", meter));
        query.strings().ifPresent(many -> and("t.strings = :strings", "strings", many));
        query.slowest().ifPresent(tempo -> and("t.tempo >= :slowest", "slowest", tempo));
        query.fastest().ifPresent(tempo -> and("t.tempo <= :fastest", "fastest", tempo));
        query.series().ifPresent(slug -> and("s.slug = :series", "series", slug));
        this.order = order(query);
    }

    private void and(String condition, String name, Object value) {
        values.put(name, value);
        and(condition);
    }

    private void and(String condition) {
        all.add(condition);
    }

    private String like(String column, String pattern) {
        String name = "like" + values.size();
        values.put(name, pattern);
        return column + " like :" + name;
    }

    /** The last of them tell any two lessons apart, so that no lesson is on two pages of a list. */
    private String order(LessonQuery query) {
        String newest = "e.published_at desc, s.slug, e.number desc";
        return switch (query.order()) {
            case NEWEST -> query.words().isEmpty() ? newest : inTitle(query) + ", " + newest;
            case NUMBER -> "s.title, s.slug, e.number";
            case LEVEL -> LEVELS + ", s.slug, e.number";
            case TEMPO -> "t.tempo, s.slug, e.number";
            case TITLE -> "lower(e.title), s.slug, e.number";
        };
    }

    private String inTitle(LessonQuery query) {
        values.put("title", "%" + query.words().first() + "%");
        return "case when lower(e.title) like :title then 0 else 1 end";
    }

    String where() {
        return " where " + String.join(" and ", all);
    }

    String orderBy() {
        return " order by " + order;
    }

    /** Binds what {@code where} alone names, or all. */
    Query bind(Query query, boolean ordered) {
        values.forEach((name, value) -> {
            if (ordered || !name.equals("title")) {
                query.bind(name, value);
            }
        });
        return query;
    }
}
