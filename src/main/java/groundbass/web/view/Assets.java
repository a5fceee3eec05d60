package groundbass.web.view;

import groundbass.web.answer.CachedResponse;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The style sheets, scripts, pictures and typefaces of the pages: files of {@code groundbass/web/assets/} on the class
 * path, most of them bundled by the build from {@code src/main/browser}. Read once and kept. Thread-safe.
 */
public final class Assets {
    static final String PATH = "/assets/";

    private static final String FOLDER = "groundbass/web/assets/";
    // a flat folder and plain names: nothing here can climb out of it
    private static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]*(\\.[a-z0-9]+)+");
    private static final Set<String> NAMES_OTHERS = Set.of("css", "js");
    private static final Map<String, String> TYPES = Map.of(
            "css", "text/css; charset=utf-8",
            "js", "text/javascript; charset=utf-8",
            "map", "application/json",
            "txt", "text/plain; charset=utf-8",
            "svg", "image/svg+xml",
            "woff2", "font/woff2",
            "png", "image/png",
            "ico", "image/x-icon");

    // how a style sheet names a typeface and a script its worker
    private static final Pattern NEIGHBOUR = Pattern.compile("(?<=[(\"])\\./(" + NAME + ")(?=[)\"])");

    private final Map<String, CachedResponse> known = new ConcurrentHashMap<>();

    /** The asset of that file name, if there is one of a kind that is served. */
    public Optional<CachedResponse> find(String name) {
        var kept = known.get(name);
        if (kept != null) {
            return Optional.of(kept);
        }
        var read = NAME.matcher(name).matches() ? read(name) : Optional.<CachedResponse>empty();
        read.ifPresent(bytes -> known.put(name, bytes));
        return read;
    }

    /** The address {@code /assets/x.css} with the version of its content, so that it may be cached for good. */
    public String versioned(String name) {
        var asset = find(name).orElseThrow(() -> new IllegalArgumentException("no asset is named " + name));
        return PATH + name + "?v=" + asset.version();
    }

    private Optional<CachedResponse> read(String name) {
        String ending = name.substring(name.lastIndexOf('.') + 1);
        var bytes = TYPES.containsKey(ending) ? bytes(name) : Optional.<byte[]>empty();
        return bytes.map(
                b -> CachedResponse.of(NAMES_OTHERS.contains(ending) ? withVersions(b) : b, TYPES.get(ending)));
    }

    /** Names of other assets get their versions, so that these may be cached for good as well. */
    private byte[] withVersions(byte[] bytes) {
        String text = new String(bytes, StandardCharsets.UTF_8);
        return NEIGHBOUR
                .matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(versioned(found.group(1))))
                .getBytes(StandardCharsets.UTF_8);
    }

    private static Optional<byte[]> bytes(String name) {
        try (var in = Assets.class.getClassLoader().getResourceAsStream(FOLDER + name)) {
            return in == null ? Optional.empty() : Optional.of(in.readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
