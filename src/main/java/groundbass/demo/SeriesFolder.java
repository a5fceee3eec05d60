package groundbass.demo;

import groundbass.catalog.series.SeriesForm;
import groundbass.demo.SeriesPackage.EpisodePackage;
import groundbass.document.Clearance;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.identity.Slug;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.OptionalInt;
import java.util.Properties;
import java.util.stream.IntStream;

/** Reads a series from a folder of the files that an educator would write; seed-data/README.md gives their form. */
final class SeriesFolder {
    private static DocumentSettings settings(Properties facts) {
        var usual = DocumentSettings.USUAL;
        return new DocumentSettings(
                LANGUAGE,
                facts.getProperty("tempos", usual.tempos()),
                facts.getProperty("rounds", usual.rounds()),
                usual.naming());
    }

    private static final String LANGUAGE = DocumentSettings.USUAL.language();

    private SeriesFolder() {}

    /** @throws UncheckedIOException where a file that must be there cannot be read */
    static SeriesPackage read(Path folder) {
        var facts = properties(folder.resolve("series.properties"));
        var form =
                new SeriesForm(fact(facts, "title"), fact(facts, "slug"), fact(facts, "summary"), fact(facts, "zone"));
        return new SeriesPackage(
                form,
                new Slug(form.slug()),
                episodeFolders(folder).stream().map(SeriesFolder::episode).toList());
    }

    private static List<Path> episodeFolders(Path folder) {
        try (var children = Files.list(folder)) {
            return children.filter(child -> Files.exists(child.resolve("line.txt")))
                    .sorted()
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static EpisodePackage episode(Path folder) {
        var facts = properties(folder.resolve("episode.properties"));
        var level = Level.parse(fact(facts, "level")).orElse(Level.INTERMEDIATE);
        var document = EpisodeDocument.titled(fact(facts, "title"), level)
                .edit()
                .summary(fact(facts, "summary"))
                .notes(text(folder.resolve("notes.md")))
                .mainLine(new LineSource("", text(folder.resolve("line.txt"))))
                .exercises(exercises(folder))
                .groove(groove(folder, fact(facts, "groove")))
                .rights(rights(facts))
                .settings(settings(facts))
                .done();
        return new EpisodePackage(folder.getFileName().toString(), document, weeksAgo(facts));
    }

    /** What an educator puts into such a folder is their own. */
    private static Rights rights(Properties facts) {
        return new Rights(fact(facts, "composer"), fact(facts, "credit"), fact(facts, "rights"), Clearance.OWN);
    }

    private static List<LineSource> exercises(Path folder) {
        return IntStream.iterate(1, number -> number + 1)
                .mapToObj(number -> folder.resolve("exercise-" + number + ".txt"))
                .takeWhile(Files::exists)
                .map(file -> new LineSource("", text(file)))
                .toList();
    }

    private static GrooveSource groove(Path folder, String name) {
        var own = folder.resolve("groove.txt");
        return name.isBlank() && Files.exists(own) ? new GrooveSource("", text(own)) : new GrooveSource(name, "");
    }

    private static OptionalInt weeksAgo(Properties facts) {
        String weeks = fact(facts, "published.weeks.ago");
        return weeks.isBlank() ? OptionalInt.empty() : OptionalInt.of(Integer.parseInt(weeks));
    }

    private static String fact(Properties facts, String name) {
        return facts.getProperty(name, "").strip();
    }

    private static Properties properties(Path file) {
        try (var reader = Files.newBufferedReader(file)) {
            var properties = new Properties();
            properties.load(reader);
            return properties;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String text(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
