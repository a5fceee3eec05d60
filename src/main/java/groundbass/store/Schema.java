package groundbass.store;

import groundbass.store.fault.DatabaseAway;
import groundbass.store.migration.MigrationLog;
import groundbass.store.migration.Migrations;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.MigrationInfo;
import org.flywaydb.core.api.MigrationState;
import org.flywaydb.core.api.configuration.FluentConfiguration;

/** Brings a database up to date, and sees that what it says of itself is so. */
final class Schema {
    private static final Pattern TABLE = Pattern.compile("^create table (\\w+)", Pattern.MULTILINE);
    private static final Pattern DROPPED = Pattern.compile("^drop table (\\w+)", Pattern.MULTILINE);

    private final DataSource database;
    private final Flyway flyway;

    private Schema(FluentConfiguration configuration) {
        this.flyway = configuration.locations("classpath:" + Migrations.FOLDER).load();
        this.database = flyway.getConfiguration().getDataSource();
    }

    /** Of an open database, to be read. */
    static Schema of(DataSource database) {
        return new Schema(Flyway.configure().dataSource(database));
    }

    /**
     * Whether it is as this program makes it, which is asked without the library, since most starts find it so.
     *
     * @throws CannotOpen where it is, and tables that it should have are gone
     */
    static boolean isUpToDate(Connection connection) {
        if (!MigrationLog.isWhole(connection)) {
            return false;
        }
        lookAt(
                connection,
                made(Migrations.all().stream().map(Migrations.Migration::script).toList()));
        return true;
    }

    /**
     * To be changed, by connections that wait as long as it takes: a migration may work for an hour, and another server
     * may be at it already, where those of the site give up after some seconds.
     */
    static Schema patient(String url, String user, String password) {
        return new Schema(Flyway.configure().dataSource(url, user, password));
    }

    /** @throws CannotOpen where a newer program has written it, or where tables that it should have are gone */
    void bringUpToDate() {
        var before = flyway.info().applied();
        refuseNewer(before);
        lookAt(before);
        flyway.migrate();
    }

    /** @throws CannotOpen where {@link #bringUpToDate} would have something to do, or would refuse */
    void demandUpToDate() {
        var applied = flyway.info().applied();
        refuseNewer(applied);
        if (applied.length == 0) {
            throw new CannotOpen("There is no site in this database. Check --database-url and --data.");
        }
        if (flyway.info().pending().length > 0) {
            throw new CannotOpen("The database was written by an earlier version of this program, and has not been"
                    + " brought up to date yet. This command changes nothing: run it with that version, or start the"
                    + " server of this one first.");
        }
        lookAt(applied);
    }

    /**
     * Makes the tables as the migrations up to one of them left them.
     *
     * @throws CannotOpen where there are tables already, or where this program does not know that migration
     */
    void create(String migration) {
        if (flyway.info().applied().length > 0) {
            throw new CannotOpen(
                    "There is a site in this database already. A backup is restored into a new one: name an"
                            + " empty folder (--data), and a database without tables where the site has a database server.");
        }
        boolean known = Arrays.stream(flyway.info().all())
                .anyMatch(each -> String.valueOf(each.getVersion()).equals(migration));
        if (!known) {
            throw new CannotOpen("The backup was made by another version of this program: it has the migration "
                    + migration + ", which this one does not know. Restore it with that version, or a newer one.");
        }
        Flyway.configure()
                .configuration(flyway.getConfiguration())
                .target(migration)
                .load()
                .migrate();
    }

    /** The last migration that was done. */
    String migration() {
        return String.valueOf(flyway.info().current().getVersion());
    }

    /** Every table that a migration has made and none has taken away, in the order in which they were made. */
    List<String> tables() {
        return tables(flyway.info().applied());
    }

    private static void refuseNewer(MigrationInfo... applied) {
        var newer = Arrays.stream(applied)
                .filter(migration -> migration.getState() == MigrationState.FUTURE_SUCCESS
                        || migration.getState() == MigrationState.FUTURE_FAILED)
                .map(migration -> String.valueOf(migration.getVersion()))
                .toList();
        if (!newer.isEmpty()) {
            throw new CannotOpen("The database was written by a newer version of this program: it has the migration "
                    + newer.get(newer.size() - 1)
                    + ", which this one does not know. Start the newer version, or restore"
                    + " the backup that was made before it was first started.");
        }
    }

    /** Reads a row of every table that a migration has made: a file that was overwritten in part opens all the same. */
    private void lookAt(MigrationInfo... applied) {
        try (Connection connection = database.getConnection()) {
            lookAt(connection, tables(applied));
        } catch (SQLException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void lookAt(Connection connection, List<String> tables) {
        tables.forEach(table -> lookAt(connection, table));
    }

    private static void lookAt(Connection connection, String table) {
        try (var statement = connection.createStatement();
                var rows = statement.executeQuery("select * from " + table + " fetch first 1 row only")) {
            rows.next();
        } catch (SQLException e) {
            if (DatabaseAway.is(e)) {
                throw new CannotOpen(
                        "The database does not answer: its table \"" + table + "\" cannot be read for now ("
                                + e.getMessage() + "). See that its server runs, and start again.",
                        e);
            }
            throw new CannotOpen(
                    "The database is damaged: its table \"" + table + "\" cannot be read. Restore the database, and the"
                            + " folder of files with it, from a backup; keep the damaged one until that is done.",
                    e);
        }
    }

    private static List<String> tables(MigrationInfo... applied) {
        return made(Arrays.stream(applied)
                .filter(migration -> migration.getState() == MigrationState.SUCCESS)
                .map(MigrationInfo::getScript)
                .toList());
    }

    private static List<String> made(List<String> scripts) {
        var tables = new ArrayList<String>();
        scripts.stream().map(Migrations::text).forEach(text -> {
            tables.addAll(named(TABLE, text));
            tables.removeAll(named(DROPPED, text));
        });
        return List.copyOf(tables);
    }

    private static List<String> named(Pattern statement, String text) {
        return statement
                .matcher(text)
                .results()
                .map((MatchResult found) -> found.group(1))
                .toList();
    }
}
