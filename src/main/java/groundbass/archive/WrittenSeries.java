package groundbass.archive;

import groundbass.archive.file.ArchiveFiles;
import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Facts;
import groundbass.archive.file.FolderSource;
import groundbass.archive.file.Texts;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.EpisodeDocument;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;

/**
 * A series that somebody wrote as a folder of files: what it says and each of its lessons, nothing of any site's rows.
 *
 * @param lessons in the order of the series
 */
public record WrittenSeries(SeriesForm form, List<Lesson> lessons, List<ArchiveRemark> findings) {
    public WrittenSeries {
        lessons = List.copyOf(lessons);
        findings = List.copyOf(findings);
    }

    /**
     * A lesson of it.
     *
     * @param number that its folder begins with; its place among the folders where it begins with none
     * @param weeksAgo what the file says of it, for a demonstration; mostly empty
     */
    public record Lesson(String folder, int number, EpisodeDocument document, String weeksAgo) {}

    /**
     * Reads what can be read, and finds what cannot.
     *
     * @param folder may lie in another file system, such as a jar's
     * @throws IllegalArgumentException where it says nothing of a series
     */
    public static WrittenSeries read(Path folder) throws IOException {
        try (var source = new FolderSource(folder)) {
            return read(new Texts(source), source);
        } catch (DamagedFile e) {
            throw new IllegalArgumentException(e.getMessage(), e);
        }
    }

    static WrittenSeries read(Texts texts, ArchiveFiles source) throws DamagedFile {
        var form = SeriesFacts.read(seriesFacts(texts)).form();
        var lessons = new ArrayList<Lesson>();
        var findings = new ArrayList<ArchiveRemark>();
        int place = 0;
        for (String folder : folders(source)) {
            place++;
            try {
                lessons.add(lesson(folder, place, texts));
            } catch (DamagedFile e) {
                findings.add(e.finding(folder));
            }
        }
        return new WrittenSeries(form, lessons, findings);
    }

    static Facts seriesFacts(Texts texts) throws DamagedFile {
        String text = texts.find(ArchiveNames.SERIES).orElseThrow(() -> DamagedFile.of("archive.problem.none"));
        try {
            return Facts.read(text);
        } catch (DamagedFile e) {
            throw e.in(ArchiveNames.SERIES);
        }
    }

    private static List<String> folders(ArchiveFiles source) {
        var folders = new TreeSet<>(ArchiveNames.BY_NUMBER);
        for (String name : source.names()) {
            int end = name.indexOf('/');
            String file = name.substring(end + 1);
            boolean told = file.equals(DocumentFiles.LINE) || file.equals(DocumentFiles.FACTS);
            if (end > 0 && told && !name.startsWith(ArchiveNames.BEGINNING)) {
                folders.add(name.substring(0, end));
            }
        }
        return List.copyOf(folders);
    }

    private static Lesson lesson(String folder, int place, Texts texts) throws DamagedFile {
        var document = DocumentFiles.read(name -> texts.find(folder + "/" + name), title(folder))
                .edit()
                .backingTracks(List.of()) // recordings are known by rows, which nobody writes by hand
                .done();
        var facts = Facts.read(texts.find(folder + "/" + DocumentFiles.FACTS).orElse(""));
        int number = ArchiveNames.number(folder) > 0 ? ArchiveNames.number(folder) : place;
        return new Lesson(folder, number, document, facts.word("published.weeks.ago"));
    }

    /** {@code 02-night-ferry} is called Night ferry where its files do not say otherwise. */
    private static String title(String folder) {
        String words = folder.replaceFirst("^[0-9]{1,4}-", "").replace('-', ' ').strip();
        return words.isEmpty() ? folder : words.substring(0, 1).toUpperCase(Locale.ROOT) + words.substring(1);
    }
}
