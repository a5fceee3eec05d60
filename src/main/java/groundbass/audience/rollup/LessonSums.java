package groundbass.audience.rollup;

import groundbass.audience.rollup.Watermark.Span;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;

/** The sums of each lesson, by file and by hour since it was brought out. Works in the caller's transaction. */
final class LessonSums {
    /** The records of a span. */
    private static final String SPAN = "download.id >= :from and download.id < :until";

    static final String FILES = "select taken.episode_id, taken.file_name, " + TakenSums.SUMS + " from "
            + TakenSums.records(SPAN) + " group by taken.episode_id, taken.file_name";

    static final String HOURS = "select taken.episode_id, taken.age, " + TakenSums.SUMS + " from "
            + TakenSums.aged(SPAN) + " group by taken.episode_id, taken.age";

    private LessonSums() {}

    static void add(Handle handle, Span span) {
        add(handle, span, "taken_file", "file_name", FILES);
        add(handle, span, "taken_hour", "age", HOURS);
    }

    static void clear(Handle handle) {
        handle.execute("delete from taken_file");
        handle.execute("delete from taken_hour");
    }

    private static void add(Handle handle, Span span, String table, String part, String counted) {
        String merge = "merge into <table> kept using (<counted>) fresh"
                + " on kept.episode_id = fresh.episode_id and kept.<part> = fresh.<part>"
                + " when matched then update set " + each("%1$s = kept.%1$s + fresh.%1$s")
                + " when not matched then insert (episode_id, <part>, " + TakenSums.NAMES + ")"
                + " values (fresh.episode_id, fresh.<part>, " + each("fresh.%s") + ")";
        handle.createUpdate(merge.replace("<counted>", counted)
                        .replace("<table>", table)
                        .replace("<part>", part))
                .bind("from", span.firstId())
                .bind("until", span.endId())
                .execute();
    }

    private static String each(String form) {
        return Arrays.stream(TakenSums.NAMES.split(", ")).map(form::formatted).collect(Collectors.joining(", "));
    }
}
