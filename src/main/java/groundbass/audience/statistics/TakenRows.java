package groundbass.audience.statistics;

import groundbass.audience.download.DownloadRows;
import groundbass.audience.rollup.Counting;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesId;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Jdbi;

/** Who took which file when, read piece by piece: an id is a moment and some chance, so that their order is that of time. */
final class TakenRows {
    private static final int PIECE = 1000;
    private static final String FIRST = "0".repeat(16);
    private static final String LAST = "z".repeat(16);

    private static final String TAKEN = """
            select <columns>, student.email from download
            <join> student on student.id = download.student_id
            where %s and <counted> and download.id <side> :from
            order by download.id <order> fetch first :most rows only""";

    private final Jdbi jdbi;
    private final String of;
    private final List<?> ids;

    private TakenRows(Jdbi jdbi, String of, List<?> ids) {
        this.jdbi = jdbi;
        this.of = of;
        this.ids = ids;
    }

    static TakenRows ofLesson(Jdbi jdbi, EpisodeId lesson) {
        return new TakenRows(jdbi, "download.episode_id in (<ids>)", List.of(lesson));
    }

    /** Of all their lessons. @param series at least one */
    static TakenRows ofSeries(Jdbi jdbi, Collection<SeriesId> series) {
        return new TakenRows(jdbi, Counting.OF_SERIES, List.copyOf(series));
    }

    /** The last ones, the latest first. */
    List<AddressedDownload> latest(int most) {
        return read(Direction.BACK, LAST, most, false);
    }

    /** Each, the earliest first, holding no more than a piece of them. @param known only those of students */
    void forEach(boolean known, Consumer<AddressedDownload> each) {
        String from = FIRST;
        List<AddressedDownload> piece;
        do {
            piece = read(Direction.ON, from, PIECE, known);
            piece.forEach(each);
            from = piece.isEmpty() ? from : last(piece);
        } while (piece.size() == PIECE);
    }

    private enum Direction {
        ON(">", "asc"),
        BACK("<", "desc");

        private final String side;
        private final String order;

        Direction(String side, String order) {
            this.side = side;
            this.order = order;
        }
    }

    private static String last(List<AddressedDownload> piece) {
        return piece.get(piece.size() - 1).download().id().value();
    }

    private List<AddressedDownload> read(Direction direction, String from, int most, boolean known) {
        return jdbi.withHandle(handle -> handle.createQuery(TAKEN.formatted(of))
                .define("columns", DownloadRows.COLUMNS)
                .define("join", known ? "join" : "left join")
                .define("counted", Counting.COUNTED)
                .define("side", direction.side)
                .define("order", direction.order)
                .bindList("ids", ids)
                .bind("from", from)
                .bind("most", most)
                .mapTo(AddressedDownload.class)
                .list());
    }
}
