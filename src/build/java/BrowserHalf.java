import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.jar.JarFile;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;

/**
 * Builds and checks the scripts and style sheets of the pages. Maven starts this file from source, with the jars of
 * the two programs that it calls on the class path: esbuild bundles, Deno formats, lints, checks types and runs tests.
 * Neither needs the network. Ends with status 1 where either finds anything, warnings included. The libraries that
 * scripts import by name are jars on the class path too; their licences become one more asset.
 *
 * <p>{@code bundle} makes what pages name, and what tests import inside a browser; {@code check} looks at form, lint and
 * types and runs the tests that need no browser; {@code format} rewrites the sources.
 */
final class BrowserHalf {
    private static final Path MAIN = Path.of("src/main/browser");
    private static final Path TEST = Path.of("src/test/browser");
    private static final Path TARGET = Path.of("target");
    private static final Path WORK = TARGET.resolve("browser");
    private static final Path LIBRARIES = WORK.resolve("node_modules");
    private static final String ASSETS = "groundbass/web/assets";
    private static final Pattern PROGRAM =
            Pattern.compile("META-INF/resources/_static/[^/]+/([^/]+)/(?:bin/)?(esbuild|deno)(\\.exe)?");
    /** In the import map of a library's jar: how scripts name it, and its folder in the jar. */
    private static final Pattern LIBRARY =
            Pattern.compile("\"([^\"]+)\" : \"(/_static/\\S+?/[0-9][^/]*/)[^\"]+\\.js\"");

    private static final Pattern READ = Pattern.compile("LICENSE|package\\.json|.*\\.(js|d\\.cts)");
    private static final Pattern BUNDLED = Pattern.compile("/node_modules/((?:@[^/\"]+/)?[^/\"]+)/");

    private BrowserHalf() {}

    public static void main(String[] args) throws IOException, InterruptedException {
        unpackLibraries();
        switch (args[0]) {
            case "bundle" -> {
                bundle(MAIN, TARGET.resolve("classes"));
                licences(TARGET.resolve("classes"));
                bundle(TEST, TARGET.resolve("test-classes"));
            }
            case "check" -> check();
            case "format" -> {
                deno(MAIN, "fmt", "--quiet");
                deno(TEST, "fmt", "--quiet");
            }
            default -> throw new IllegalArgumentException("unknown: " + args[0]);
        }
    }

    /** Each file at the top of the folder is what one page names; what it imports becomes part of it. */
    private static void bundle(Path folder, Path classes) throws IOException, InterruptedException {
        var command = new ArrayList<String>(List.of(
                program("esbuild").toString(),
                "--bundle",
                "--format=esm",
                "--target=es2022",
                "--minify",
                "--sourcemap", // fetched by an opened debugger only, which then shows the modules as they were written
                "--external:*.woff2",
                "--metafile=" + contents(classes),
                "--log-level=warning",
                "--color=false",
                "--outdir=" + classes.resolve(ASSETS)));
        try (Stream<Path> files = Files.list(folder)) {
            files.map(Path::toString).filter(BrowserHalf::isPageFile).sorted().forEach(command::add);
        }
        run(Path.of(""), command, true);
    }

    /** Where esbuild writes down what became part of the bundles. */
    private static Path contents(Path classes) {
        return WORK.resolve(classes.getFileName() + ".json");
    }

    /** The notices that have to go along with every copy of the libraries in the bundles. */
    private static void licences(Path classes) throws IOException {
        var all = new StringBuilder();
        var libraries =
                BUNDLED.matcher(Files.readString(contents(classes))).results().map(found -> found.group(1));
        for (String library : new TreeSet<>(libraries.toList())) {
            String licence = Files.readString(LIBRARIES.resolve(library).resolve("LICENSE"));
            all.append(library).append("\n\n").append(licence.strip()).append("\n\n\n");
        }
        Files.writeString(classes.resolve(ASSETS).resolve("licenses.txt"), all);
    }

    private static boolean isPageFile(String name) {
        return name.endsWith(".css") || name.endsWith(".js") && !name.endsWith(".test.js");
    }

    private static void check() throws IOException, InterruptedException {
        for (Path folder : List.of(MAIN, TEST)) {
            deno(folder, "fmt", "--check");
            deno(folder, "lint", "--quiet");
        }
        deno(MAIN, "check", "--quiet", "--no-remote", "--no-npm", ".");
        // without a check of types: those of the assertions would have to be fetched
        deno(TEST, "test", "--quiet", "--no-check", "--no-prompt", "--no-remote", "--no-npm", "--allow-read=../..");
    }

    /** Runs Deno in a folder, where it finds its settings in {@code deno.json}. */
    private static void deno(Path folder, String... arguments) throws IOException, InterruptedException {
        var command = new ArrayList<>(List.of(program("deno").toString()));
        command.addAll(List.of(arguments));
        run(folder, command, false);
    }

    /** Where {@code mustBeSilent}, a program that said anything has found something, though it ended well. */
    private static void run(Path folder, List<String> command, boolean mustBeSilent)
            throws IOException, InterruptedException {
        var builder = new ProcessBuilder(command)
                .directory(folder.toAbsolutePath().toFile())
                .redirectErrorStream(true);
        builder.environment()
                .putAll(Map.of(
                        "DENO_DIR",
                        WORK.resolve("cache").toAbsolutePath().toString(),
                        "DENO_NO_UPDATE_CHECK",
                        "1",
                        "NODE_PATH",
                        LIBRARIES.toAbsolutePath().toString(),
                        "NO_COLOR",
                        "1"));
        var process = builder.start();
        String said = new String(process.getInputStream().readAllBytes());
        if (process.waitFor() != 0 || mustBeSilent && !said.isBlank()) {
            System.err.println(said);
            System.exit(1);
        }
    }

    private static List<String> jars() {
        return Stream.of(System.getProperty("java.class.path").split(java.io.File.pathSeparator))
                .filter(path -> path.endsWith(".jar"))
                .toList();
    }

    /** Lays the libraries where esbuild and the settings of Deno look for them, each under the name that scripts use. */
    private static void unpackLibraries() throws IOException {
        for (String jar : jars()) {
            try (var file = new JarFile(jar)) {
                var names = file.getEntry("META-INF/importmap.json");
                var library = LIBRARY.matcher(names == null ? "" : text(file, names));
                if (library.find()) {
                    unpackLibrary(file, "META-INF/resources" + library.group(2), LIBRARIES.resolve(library.group(1)));
                }
            }
        }
    }

    private static void unpackLibrary(JarFile file, String folder, Path to) throws IOException {
        for (var entry : Collections.list(file.entries())) {
            String name = entry.getName().startsWith(folder) ? entry.getName().substring(folder.length()) : "";
            if (READ.matcher(name).matches()) {
                Path path = to.resolve(name);
                Files.createDirectories(path.getParent());
                Files.writeString(path, text(file, entry));
            }
        }
    }

    private static String text(JarFile file, ZipEntry entry) throws IOException {
        try (var in = file.getInputStream(entry)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** Takes the program for this machine out of its jar, once for each version. */
    private static Path program(String name) throws IOException {
        for (String jar : jars()) {
            try (var file = new JarFile(jar)) {
                for (var entry : Collections.list(file.entries())) {
                    var matcher = PROGRAM.matcher(entry.getName());
                    if (matcher.matches() && matcher.group(2).equals(name)) {
                        return unpacked(
                                file,
                                entry,
                                WORK.resolve(name + "-" + matcher.group(1)).toAbsolutePath());
                    }
                }
            }
        }
        throw new IllegalStateException("no " + name + " for this machine: see the build's plugin exec in pom.xml");
    }

    private static Path unpacked(JarFile file, ZipEntry entry, Path to) throws IOException {
        if (!Files.isExecutable(to)) {
            Files.createDirectories(to.getParent());
            Path half = Files.createTempFile(to.getParent(), "unpacked", null);
            try (var in = file.getInputStream(entry)) {
                Files.copy(in, half, StandardCopyOption.REPLACE_EXISTING);
            }
            if (!half.toFile().setExecutable(true)) {
                throw new IOException("cannot be made executable: " + half);
            }
            Files.move(half, to, StandardCopyOption.ATOMIC_MOVE);
        }
        return to;
    }
}
