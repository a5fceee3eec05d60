package groundbass.web.student.account;

import groundbass.audience.news.NewsReader;
import groundbass.audience.news.NewsReaders;
import groundbass.audience.student.Student;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Of which series a student gets the news, as they see it. */
public final class OwnNews {
    private final SeriesCatalog catalog;
    private final NewsReaders readers;

    public OwnNews(SeriesCatalog catalog, NewsReaders readers) {
        this.catalog = catalog;
        this.readers = readers;
    }

    /**
     * @param path of its page; empty where all of it was taken back
     * @param on whether they get its news
     */
    public record Row(String id, String series, Optional<String> path, boolean on) {}

    /** Series of which something is out, and those whose news they get: what was agreed to can be ended here. */
    List<Row> of(Student student) {
        Set<SeriesId> on = readers.of(student.email()).stream()
                .filter(reader -> reader.endedAt().isEmpty())
                .map(NewsReader::series)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        var published = catalog.published();
        var out = published.stream()
                .map(series ->
                        row(series, Optional.of("/series/" + series.slug().value()), on.contains(series.id())));
        var back = on.stream()
                .filter(id -> published.stream().noneMatch(series -> series.id().equals(id)))
                .flatMap(id -> catalog.find(id).stream())
                .map(series -> row(series, Optional.empty(), true));
        return Stream.concat(out, back).toList();
    }

    private static Row row(Series series, Optional<String> path, boolean on) {
        return new Row(series.id().value(), series.title(), path, on);
    }

    void speak(Student student, Locale locale) {
        readers.speak(student.email(), locale);
    }
}
