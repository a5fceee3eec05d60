package groundbass.kill;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;

/** Starts a {@link Victim}, lets it work for a while and ends it with signal 9. */
final class Killing implements AutoCloseable {
    private static final int KILLED = 128 + 9;

    private final ScheduledExecutorService killer = Executors.newSingleThreadScheduledExecutor();

    /**
     * All that was acknowledged.
     *
     * @param after counted from when every kind was acknowledged once
     */
    List<Acknowledged> kill(Site site, Duration after) throws IOException, InterruptedException {
        Process process = start(site);
        var acknowledged = new ArrayList<Acknowledged>();
        try (BufferedReader output = process.inputReader()) {
            var awaited = EnumSet.allOf(Kind.class);
            for (String line = output.readLine(); line != null; line = output.readLine()) {
                Optional<Acknowledged> one = Acknowledged.read(line);
                one.ifPresent(acknowledged::add);
                if (one.filter(each -> awaited.remove(each.kind())).isPresent() && awaited.isEmpty()) {
                    // by its handle: killing the Process itself would close the pipe and what still lies in it
                    killer.schedule(process.toHandle()::destroyForcibly, after.toMillis(), TimeUnit.MILLISECONDS);
                }
            }
        } finally {
            process.destroyForcibly();
        }
        if (process.waitFor() != KILLED) {
            throw new IllegalStateException("ended by itself, with status " + process.exitValue());
        }
        return acknowledged;
    }

    private static Process start(Site site) throws IOException {
        var command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path")));
        // where an object server is, and under which keys, is said to this process alone
        System.getProperties().stringPropertyNames().stream()
                .filter(name -> name.startsWith("aws."))
                .forEach(name -> command.add("-D" + name + "=" + System.getProperty(name)));
        command.addAll(List.of(Victim.class.getName(), site.folder().toString(), site.database(), site.files()));
        return new ProcessBuilder(command)
                .redirectError(ProcessBuilder.Redirect.appendTo(
                        site.folder().resolve("victim.log").toFile()))
                .start();
    }

    @Override
    public void close() {
        killer.shutdownNow();
    }
}
