package groundbass.site;

import static groundbass.site.YearRun.line;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/** What the process and the folder of a {@link YearRun} hold. */
final class YearsFigures {
    private static final double MEBIBYTE = 1024.0 * 1024;

    private final Jdbi jdbi;
    private final Path folder;
    /** By table, once for each time that was looked. */
    private final Map<String, List<Long>> rows = new TreeMap<>();

    YearsFigures(Jdbi jdbi, Path folder) {
        this.jdbi = jdbi;
        this.folder = folder;
    }

    String of(int week) throws IOException {
        jdbi.useHandle(this::count);
        var memory = ManagementFactory.getMemoryMXBean();
        memory.gc();
        memory.gc();
        return line(
                "week %2d: heap %.1f MiB, classes %d, threads %d, database %.1f MiB, files %d (%.1f MiB)",
                week,
                memory.getHeapMemoryUsage().getUsed() / MEBIBYTE,
                ManagementFactory.getClassLoadingMXBean().getLoadedClassCount(),
                ManagementFactory.getThreadMXBean().getThreadCount(),
                sizes(true).stream().mapToLong(size -> size).sum() / MEBIBYTE,
                sizes(false).size(),
                sizes(false).stream().mapToLong(size -> size).sum() / MEBIBYTE);
    }

    private void count(Handle handle) {
        var tables = handle.createQuery(
                        "select table_name from information_schema.tables where table_schema = 'PUBLIC'")
                .mapTo(String.class)
                .list();
        for (String table : tables) {
            var number = handle.createQuery("select count(*) from \"" + table + "\"")
                    .mapTo(Long.class)
                    .one();
            rows.computeIfAbsent(table, name -> new ArrayList<>()).add(number);
        }
    }

    /** @param database its own files, or all others */
    private List<Long> sizes(boolean database) throws IOException {
        try (var files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .filter(file -> file.toString().endsWith(".mv.db") == database)
                    .map(YearsFigures::size)
                    .toList();
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** A line for each table. */
    String rows() {
        return rows.entrySet().stream()
                .map(table -> line("%-20s", table.getKey().toLowerCase(Locale.ROOT))
                        + table.getValue().stream()
                                .map(number -> line("%7d", number))
                                .collect(Collectors.joining()))
                .collect(Collectors.joining("\n"));
    }
}
