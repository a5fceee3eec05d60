package groundbass.backup;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.MappingIterator;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.ResultSetMetaData;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** A table of the database, whose rows go out as JSON, an object a line, and come in again. */
record Table(String name, List<Column> columns) {
    private static final ObjectMapper JSON = new ObjectMapper();
    private static final int ROWS_AT_ONCE = 500;

    /** @param counted whether the database numbers the rows by it */
    record Column(String name, ColumnKind kind, boolean counted) {}

    /** The table as it stands in a database. */
    static Table in(Connection database, String name) throws SQLException {
        try (var statement = database.createStatement();
                var none = statement.executeQuery("select * from " + name + " where 1 = 0")) {
            return new Table(name, columns(none.getMetaData()));
        }
    }

    private static List<Column> columns(ResultSetMetaData row) throws SQLException {
        var columns = new ArrayList<Column>();
        for (int i = 1; i <= row.getColumnCount(); i++) {
            String name = row.getColumnName(i).toLowerCase(Locale.ROOT);
            columns.add(new Column(name, ColumnKind.of(row.getColumnType(i)), row.isAutoIncrement(i)));
        }
        return List.copyOf(columns);
    }

    /** Writes all rows without holding them in memory, and leaves the stream open. @return how many there are */
    long writeTo(OutputStream out, Connection database) throws SQLException, IOException {
        long rows = 0;
        try (var statement = database.createStatement();
                var json = JSON.createGenerator(out).disable(JsonGenerator.Feature.AUTO_CLOSE_TARGET)) {
            statement.setFetchSize(ROWS_AT_ONCE);
            json.setRootValueSeparator(null);
            try (var all = statement.executeQuery("select " + names() + " from " + name)) {
                for (; all.next(); rows++) {
                    write(all, json);
                }
            }
        }
        return rows;
    }

    private void write(ResultSet row, JsonGenerator json) throws SQLException, IOException {
        json.writeStartObject();
        for (int i = 0; i < columns.size(); i++) {
            row.getObject(i + 1);
            if (!row.wasNull()) {
                json.writeFieldName(columns.get(i).name());
                columns.get(i).kind().write(row, i + 1, json);
            }
        }
        json.writeEndObject();
        json.writeRaw('\n');
    }

    /**
     * Puts the rows of a backup in the place of those that the migrations made. What a row does not name is null.
     *
     * @return how many there are
     */
    long readFrom(InputStream in, Connection database) throws SQLException, IOException {
        String places = columns.stream().map(column -> "?").collect(Collectors.joining(", "));
        long rows = 0;
        try (var clear = database.createStatement();
                var insert = database.prepareStatement(
                        "insert into " + name + " (" + names() + ") values (" + places + ")");
                MappingIterator<JsonNode> all = JSON.readerFor(JsonNode.class).readValues(in)) {
            clear.execute("delete from " + name);
            while (all.hasNext()) {
                bind(insert, all.next());
                insert.addBatch();
                rows++;
                if (rows % ROWS_AT_ONCE == 0) {
                    insert.executeBatch();
                }
            }
            insert.executeBatch();
        }
        countOn(database);
        return rows;
    }

    private void bind(PreparedStatement insert, JsonNode row) throws SQLException, IOException {
        for (int i = 0; i < columns.size(); i++) {
            columns.get(i)
                    .kind()
                    .bindOrNull(insert, i + 1, row.get(columns.get(i).name()));
        }
    }

    /** The next row that the database numbers follows the last one that came in. */
    private void countOn(Connection database) throws SQLException {
        for (var column : columns.stream().filter(Column::counted).toList()) {
            try (var statement = database.createStatement()) {
                long next = 1;
                try (var last = statement.executeQuery("select max(" + column.name() + ") from " + name)) {
                    next += last.next() ? last.getLong(1) : 0;
                }
                statement.execute("alter table " + name + " alter column " + column.name() + " restart with " + next);
            }
        }
    }

    private String names() {
        return columns.stream().map(Column::name).collect(Collectors.joining(", "));
    }
}
