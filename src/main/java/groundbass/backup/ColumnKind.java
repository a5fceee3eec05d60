package groundbass.backup;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.databind.JsonNode;
import java.io.IOException;
import java.sql.Date;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;

/** How the values of a column stand in a backup; the same whichever database they come from or go to. */
enum ColumnKind {
    TEXT(Types.VARCHAR) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeString(row.getString(column));
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException {
            statement.setString(column, value.textValue());
        }
    },
    NUMBER(Types.BIGINT) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeNumber(row.getLong(column));
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException {
            statement.setLong(column, value.longValue());
        }
    },
    TRUTH(Types.BOOLEAN) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeBoolean(row.getBoolean(column));
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException {
            statement.setBoolean(column, value.booleanValue());
        }
    },
    /** As RFC 3339, in UTC. */
    INSTANT(Types.TIMESTAMP_WITH_TIMEZONE) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeString(
                    row.getObject(column, OffsetDateTime.class).toInstant().toString());
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException {
            statement.setObject(column, Instant.parse(value.textValue()).atOffset(ZoneOffset.UTC));
        }
    },
    /** As ISO 8601. */
    DAY(Types.DATE) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeString(row.getDate(column).toLocalDate().toString());
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException {
            statement.setDate(column, Date.valueOf(LocalDate.parse(value.textValue())));
        }
    },
    /** As Base64. */
    BYTES(Types.VARBINARY) {
        @Override
        void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException {
            out.writeBinary(row.getBytes(column));
        }

        @Override
        void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException, IOException {
            statement.setBytes(column, value.binaryValue());
        }
    };

    private final int nothing;

    ColumnKind(int nothing) {
        this.nothing = nothing;
    }

    /** The value, which is not null. */
    abstract void write(ResultSet row, int column, JsonGenerator out) throws SQLException, IOException;

    abstract void bind(PreparedStatement statement, int column, JsonNode value) throws SQLException, IOException;

    void bindOrNull(PreparedStatement statement, int column, JsonNode value) throws SQLException, IOException {
        if (value == null || value.isNull()) {
            statement.setNull(column, nothing);
        } else {
            bind(statement, column, value);
        }
    }

    /** @param type one of {@link Types}, as a driver tells it */
    static ColumnKind of(int type) {
        return switch (type) {
            case Types.VARCHAR, Types.CHAR, Types.LONGVARCHAR, Types.CLOB -> TEXT;
            case Types.BIGINT, Types.INTEGER, Types.SMALLINT -> NUMBER;
            case Types.BOOLEAN, Types.BIT -> TRUTH;
            case Types.TIMESTAMP_WITH_TIMEZONE, Types.TIMESTAMP -> INSTANT;
            case Types.DATE -> DAY;
            case Types.BINARY, Types.VARBINARY, Types.LONGVARBINARY, Types.BLOB -> BYTES;
            default -> throw new IllegalArgumentException("no column of ours has the type " + type);
        };
    }
}
