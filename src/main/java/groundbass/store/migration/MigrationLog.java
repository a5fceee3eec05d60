package groundbass.store.migration;

import groundbass.store.migration.Migrations.Migration;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * What the migrating library notes in a database, read and written without it. It alone brings older databases up to date; where
 * there is nothing to do, and where an embedded database is still to be made, a start need not wait for it.
 */
public final class MigrationLog {
    /** As the library makes it in H2. */
    private static final String MAKE = """
            create table "flyway_schema_history" (
                "installed_rank" int not null,
                "version" varchar(50),
                "description" varchar(200) not null,
                "type" varchar(20) not null,
                "script" varchar(1000) not null,
                "checksum" int,
                "installed_by" varchar(100) not null,
                "installed_on" timestamp default current_timestamp not null,
                "execution_time" int not null,
                "success" boolean not null);
            alter table "flyway_schema_history" add constraint "flyway_schema_history_pk" primary key ("installed_rank");
            create index "flyway_schema_history_s_idx" on "flyway_schema_history" ("success");
            """;

    /** That it has begun one is a row of its own in H2, which has no version. */
    private static final String BEGUN = """
            insert into "flyway_schema_history" values (-1, null, '<< Flyway Schema History table created >>',
                'TABLE', '', null, '', current_timestamp, 0, true)""";

    private static final String DONE = """
            insert into "flyway_schema_history" values (?, ?, ?, 'SQL', ?, ?, '', current_timestamp, 0, true)""";

    private static final String READ = """
            select "version", "description", "script", "checksum", "success" from "flyway_schema_history"
            where "version" is not null order by "installed_rank\"""";

    private MigrationLog() {}

    /** Whether exactly what this program would do has been done, as it would do it now, and nothing has failed. */
    public static boolean isWhole(Connection database) {
        var done = new ArrayList<Migration>();
        try (var statement = database.createStatement();
                var rows = statement.executeQuery(READ)) {
            while (rows.next()) {
                if (!rows.getBoolean(5)) {
                    return false;
                }
                done.add(new Migration(rows.getString(1), rows.getString(2), rows.getString(3), rows.getInt(4)));
            }
        } catch (SQLException e) {
            return false; // there is none, or it cannot be read: the library says what is wrong
        }
        return done.equals(Migrations.all());
    }

    /** Makes all tables in an H2 that has none. */
    public static void make(Connection empty) throws SQLException {
        try (var statement = empty.createStatement()) {
            statement.execute(MAKE);
            statement.execute(BEGUN);
            List<Migration> all = Migrations.all();
            for (int i = 0; i < all.size(); i++) {
                statement.execute(Migrations.text(all.get(i).script()));
                note(empty, i + 1, all.get(i));
            }
        }
    }

    private static void note(Connection database, int rank, Migration done) throws SQLException {
        try (var statement = database.prepareStatement(DONE)) {
            statement.setInt(1, rank);
            statement.setString(2, done.version());
            statement.setString(3, done.description());
            statement.setString(4, done.script());
            statement.setInt(5, done.checksum());
            statement.execute();
        }
    }
}
