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
        var words = query.words().stream().map(word -> named("% " + word + "%")).toList();
        words.forEach(name -> and("t.words like :" + name));
        if (!query.techniques().isEmpty()) {
            and(query.techniques().stream()
                    .sorted()
                    .map(word -> "t.techniques like :" + named("% " + word + " %"))
                    .collect(Collectors.joining(" or ", "(", ")")));
        }
        query.level().ifPresent(level -> and("e.level = :level", "level", level));
        query.key().ifPresent(key -> and("t.key_name = :key", "key", key));
        query.meter().ifPresent(meter -> and("t.meter = :meter", "meter", meter));
        query.strings().ifPresent(many -> and("t.strings = :strings", "strings", many));
        query.slowest().ifPresent(tempo -> and("t.tempo >= :slowest", "slowest", tempo));
        query.fastest().ifPresent(tempo -> and("t.tempo <= :fastest", "fastest", tempo));
        query.series().ifPresent(slug -> and("s.slug = :series", "series", slug));
        this.order = order(query, words);
    }

    private void and(String condition, String name, Object value) {
        values.put(name, value);
        and(condition);
    }

    private void and(String condition) {
        all.add(condition);
    }

    /** The name of a pattern among the values. */
    private String named(String pattern) {
        String name = "like" + values.size();
        values.put(name, pattern);
        return name;
    }

    /** The last of them tell any two lessons apart, so that no lesson is on two pages of a list. */
    private static String order(LessonQuery query, List<String> words) {
        String newest = "e.published_at desc, s.slug, e.number desc";
        return switch (query.order()) {
            case NEWEST -> words.isEmpty() ? newest : notInTitle(words) + ", " + newest;
            case NUMBER -> "s.title, s.slug, e.number";
            case LEVEL -> LEVELS + ", s.slug, e.number";
            case TEMPO -> "t.tempo, s.slug, e.number";
            case TITLE -> "lower(e.title), s.slug, e.number";
        };
    }

    /** How many of the words the title lacks. */
    private static String notInTitle(List<String> words) {
        return words.stream()
                .map(name -> "case when t.title_words like :" + name + " then 0 else 1 end")
                .collect(Collectors.joining(" + "));
    }

    String where() {
        return " where " + String.join(" and ", all);
    }

    String orderBy() {
        return " order by " + order;
    }

    /** Binds what {@code where} names; the order names nothing else. */
    Query bind(Query query) {
        values.forEach(query::bind);
        return query;
    }
}
