import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * Runs the packaged program once until the first lesson of its demonstration is read, and has the virtual machine keep the classes
 * that it used until then, as it understood them: {@code target/groundbass.jsa}. A start that is given this archive neither
 * reads nor checks them again. {@code target/options}, which stands in front of {@code -jar} as {@code @target/options}, names it
 * and bounds the memory. Maven starts this file from source.
 *
 * <p>An archive is good for one virtual machine, jar and libraries, at the places where they were; with any other it is passed over in silence.
 */
final class ClassArchive {
    /** What the program runs with, an option in a line. */
    private static final Path COMMON = Path.of("src/build/options");

    private static final Path ARCHIVE = Path.of("target/groundbass.jsa");
    private static final Path OPTIONS_FILE = Path.of("target/options");
    private static final Path WORK = Path.of("target/archive");
    private static final Pattern LESSON = Pattern.compile("/series/harbour-rounds/[1-9]");
    private static final int SECONDS_TO_START = 300;
    private static final int MILLISECONDS_TO_ANSWER = 20_000;
    private static final int SECONDS_TO_END = 120;

    private ClassArchive() {}

    public static void main(String[] args) throws Exception {
        delete(WORK);
        Files.createDirectories(WORK);
        Files.deleteIfExists(ARCHIVE);
        int port = freePort();
        var options = new ArrayList<>(Files.readAllLines(COMMON));
        try {
            make(port);
            options.add("-XX:SharedArchiveFile=" + ARCHIVE);
            options.add("-Xlog:cds=off,cds+dynamic=off"); // an archive that does not fit is no fault
        } catch (IOException | IllegalStateException e) {
            // a program that starts later is better than none
            System.err.println("The program will start without an archive of its classes. " + e.getMessage());
        }
        delete(WORK);
        Files.write(OPTIONS_FILE, options);
    }

    private static void make(int port) throws Exception {
        var server = start(port);
        try {
            readFirstLesson(server, "http://127.0.0.1:" + port);
            server.destroy(); // as a service is ended: what was used is kept then
            if (!server.waitFor(SECONDS_TO_END, TimeUnit.SECONDS) || !Files.exists(ARCHIVE)) {
                throw new IllegalStateException("no archive was made: " + Files.readString(WORK.resolve("log")));
            }
        } finally {
            server.destroyForcibly().waitFor(); // it writes no more then
        }
    }

    private static Process start(int port) throws IOException {
        var command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(Files.readAllLines(COMMON));
        command.add("-XX:ArchiveClassesAtExit=" + ARCHIVE);
        command.addAll(List.of("-jar", "target/groundbass.jar", "serve", "--demo"));
        command.addAll(List.of("--data", WORK.resolve("site").toString(), "--port", Integer.toString(port)));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(WORK.resolve("log").toFile())
                .start();
    }

    private static void readFirstLesson(Process server, String site) throws Exception {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS_TO_START);
        while (true) {
            var lesson = LESSON.matcher(page(site + "/series/harbour-rounds"));
            if (lesson.find()) {
                page(site + lesson.group());
                return;
            }
            if (!server.isAlive() || System.nanoTime() > end) {
                throw new IllegalStateException("no lesson came: " + Files.readString(WORK.resolve("log")));
            }
            Thread.sleep(100);
        }
    }

    /** Empty while there is none. */
    private static String page(String address) {
        try {
            var connection = (HttpURLConnection) URI.create(address).toURL().openConnection();
            connection.setRequestProperty("Accept", "text/html");
            connection.setReadTimeout(MILLISECONDS_TO_ANSWER);
            try (var in = connection.getInputStream()) {
                return new String(in.readAllBytes(), StandardCharsets.UTF_8);
            }
        } catch (IOException notYet) {
            return "";
        }
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    private static void delete(Path folder) throws IOException {
        if (Files.exists(folder)) {
            try (Stream<Path> files = Files.walk(folder)) {
                for (var file : files.sorted(Comparator.reverseOrder()).toList()) {
                    Files.delete(file);
                }
            }
        }
    }
}
