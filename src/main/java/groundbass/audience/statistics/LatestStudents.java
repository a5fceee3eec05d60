package groundbass.audience.statistics;

import groundbass.audience.download.DownloadId;
import groundbass.audience.rollup.Counting;
import groundbass.audience.student.StudentId;
import groundbass.catalog.series.SeriesId;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import org.jdbi.v3.core.Jdbi;

/** Who took something of some series last, read piece by piece from the end. */
final class LatestStudents {
    private static final int PIECE = 2000;
    private static final String LAST = "z".repeat(16);

    private static final String TAKEN = "select download.id, download.student_id as student from download where "
            + Counting.OF_SERIES + " and " + Counting.COUNTED
            + " and download.student_id is not null and download.id < :from"
            + " order by download.id desc fetch first :most rows only";

    private final Jdbi jdbi;
    private final List<SeriesId> series;

    /** @param series at least one */
    LatestStudents(Jdbi jdbi, Collection<SeriesId> series) {
        this.jdbi = jdbi;
        this.series = List.copyOf(series);
    }

    /** The students of the latest downloads, the latest first, until so many are found or there are no more. */
    List<StudentId> first(int most) {
        var found = new LinkedHashSet<StudentId>();
        String from = LAST;
        List<Taken> piece;
        do {
            piece = before(from);
            piece.forEach(taken -> found.add(taken.student()));
            from = piece.isEmpty() ? from : piece.get(piece.size() - 1).id().value();
        } while (piece.size() == PIECE && found.size() < most);
        return found.stream().limit(most).toList();
    }

    private List<Taken> before(String from) {
        return jdbi.withHandle(handle -> handle.createQuery(TAKEN)
                .bindList("ids", series)
                .bind("from", from)
                .bind("most", PIECE)
                .mapTo(Taken.class)
                .list());
    }

    private record Taken(DownloadId id, StudentId student) {}
}
