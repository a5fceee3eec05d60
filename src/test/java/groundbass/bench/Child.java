package groundbass.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/** A process of ours; it is ended on close, and in any case when this program ends. */
final class Child implements AutoCloseable {
    private static final int PATIENCE_SECONDS = 10;

    private final Process process;
    private final Thread guard;

    private Child(Process process) {
        this.process = process;
        this.guard = new Thread(process::destroyForcibly);
        Runtime.getRuntime().addShutdownHook(guard);
    }

    /** A virtual machine with this one's class path and a heap of 256 MiB; what it prints is kept in {@code log}. */
    static Child java(Path log, Class<?> main, String... args) throws IOException {
        return java(log, main.getName(), args);
    }

    static Child java(Path log, String main, String... args) throws IOException {
        return java(log, List.of(), Map.of(), main, args);
    }

    /**
     * @param options of the virtual machine, beside its heap
     * @param environment what it has beside this process's own
     */
    static Child java(Path log, List<String> options, Map<String, String> environment, String main, String... args)
            throws IOException {
        var command = new ArrayList<String>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString(), "-Xmx256m"));
        command.addAll(options);
        command.addAll(List.of("-cp", System.getProperty("java.class.path"), main));
        command.addAll(List.of(args));
        return start(log, environment, command);
    }

    static Child start(Path log, List<String> command) throws IOException {
        return start(log, Map.of(), command);
    }

    /** @param environment what it has beside this process's own */
    static Child start(Path log, Map<String, String> environment, List<String> command) throws IOException {
        var builder = new ProcessBuilder(command).redirectErrorStream(true).redirectOutput(log.toFile());
        builder.environment().putAll(environment);
        return new Child(builder.start());
    }

    /** The output of a program that ends by itself. */
    static List<String> lines(List<String> command) throws IOException {
        try (var child = new Child(
                        new ProcessBuilder(command).redirectErrorStream(true).start());
                BufferedReader output = child.process.inputReader()) {
            return output.lines().toList();
        }
    }

    /** The most memory that it held at once, in MiB, where the system tells. */
    Optional<Long> mostMemory() throws IOException {
        return memory("VmHWM:");
    }

    /** The memory that it holds now, likewise. */
    Optional<Long> memory() throws IOException {
        return memory("VmRSS:");
    }

    private Optional<Long> memory(String name) throws IOException {
        var status = Path.of("/proc", Long.toString(process.pid()), "status");
        if (!Files.isReadable(status)) return Optional.empty();
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith(name))
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024)
                .findFirst();
    }

    /** Processor time that it has used, in microseconds. */
    long cpuMicros() {
        return process.info().totalCpuDuration().orElse(Duration.ZERO).toNanos() / 1000;
    }

    /** Until it has ended by itself. */
    void await() {
        process.onExit().join();
    }

    /** Once it has ended by itself. */
    int status() {
        return process.onExit().join().exitValue();
    }

    boolean isAlive() {
        return process.isAlive();
    }

    @Override
    public void close() {
        process.destroy();
        try {
            if (!process.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) process.destroyForcibly();
            Runtime.getRuntime().removeShutdownHook(guard);
        } catch (InterruptedException e) {
            process.destroyForcibly();
            Thread.currentThread().interrupt();
        }
    }
}
