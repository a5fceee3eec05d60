package groundbass.audience.download;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.jdbi.v3.core.statement.StatementContext;

/** How much of a file of the given size has been sent. */
record Progress(long size, Coverage covered, DownloadState state) {
    static Progress of(ResultSet row, StatementContext context) throws SQLException {
        return new Progress(
                row.getLong("file_size"),
                Coverage.parse(row.getString("covered")),
                DownloadState.of(row.getString("state")));
    }

    /** After a span more; {@code otherwise} is the state unless that completes it. What is complete stays so. */
    Progress plus(ByteSpan sent, DownloadState otherwise) {
        Coverage all = covered.plus(sent);
        boolean complete = state == DownloadState.COMPLETE || all.isAllOf(size);
        return new Progress(size, all, complete ? DownloadState.COMPLETE : otherwise);
    }
}
