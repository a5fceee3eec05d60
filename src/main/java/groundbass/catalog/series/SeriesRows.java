package groundbass.catalog.series;

import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Update;

/**
 * Rows that hang on a series. Who writes them locks the series first: a row that is not there yet cannot be locked, and
 * two who save at once would both enter it.
 */
public final class SeriesRows {
    private SeriesRows() {}

    /** Until the transaction ends, nobody else writes what hangs on this series. @return whether it is there */
    public static boolean lock(Handle handle, SeriesId series) {
        return handle.createQuery("select id from series where id = :id for update")
                .bind("id", series)
                .mapTo(SeriesId.class)
                .findOne()
                .isPresent();
    }

    /**
     * Puts a row in the place of the one that the series has.
     *
     * @param table of at most one row for each {@code series_id}
     * @param insert bound but for {@code :series}
     */
    public static void replace(Handle handle, SeriesId series, String table, Update insert) {
        lock(handle, series);
        handle.createUpdate("delete from <table> where series_id = :series")
                .define("table", table)
                .bind("series", series)
                .execute();
        insert.bind("series", series).execute();
    }
}
