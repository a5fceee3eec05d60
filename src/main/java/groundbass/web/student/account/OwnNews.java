package groundbass.web.student.account;

import groundbass.audience.news.NewsReader;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Student;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;

/** Of which series a student gets the news, as they see it. */
public final class OwnNews {
    private final SeriesCatalog catalog;
    private final NewsReaders readers;

    public OwnNews(SeriesCatalog catalog, NewsReaders readers) {
        this.catalog = catalog;
        this.readers = readers;
    }

    /** @param on whether they get its news */
    public record Row(String id, String series, String path, boolean on) {}

    List<Row> of(Student student) {
        Set<SeriesId> on = readers.of(student.email()).stream()
                .filter(reader -> reader.endedAt().isEmpty())
                .map(NewsReader::series)
                .collect(Collectors.toSet());
        return catalog.published().stream()
                .map(series -> new Row(
                        series.id().value(),
                        series.title(),
                        "/series/" + series.slug().value(),
                        on.contains(series.id())))
                .toList();
    }

    void speak(Student student, Locale locale) {
        readers.speak(student.email(), locale);
    }
}
