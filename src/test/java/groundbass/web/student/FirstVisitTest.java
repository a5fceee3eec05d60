package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.LoadState;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What somebody fetches who was never here, on a slow line, and how far the page moves while it comes in. A layout shift
 * is a score of the standard Layout Instability API (WICG); below 0.1 is called good there, and we want a fifth of it.
 */
@Tag("browser")
class FirstVisitTest {
    /** A slow telephone: 1.6 Mbit/s, 150 ms there and back. */
    private static final int BITS_A_SECOND = 1_600_000;

    private static final int MILLISECONDS = 150;
    private static final double MOST_SHIFT = 0.02; // ours

    @RegisterExtension
    static final PlayVisit visit = new PlayVisit();

    /** The bytes are ours; sound is left out, since it comes with what a page plays and not with the page. */
    @ParameterizedTest
    @CsvSource({
        "/, 1280, 90",
        "/, 390, 90",
        "/series/quay-exercises, 1280, 90",
        "/series/quay-exercises, 390, 90",
        "/series/quay-exercises/1, 1280, 150",
        "/series/quay-exercises/1, 390, 150",
        "/sign-in, 390, 90",
        "/privacy, 390, 90"
    })
    void aFirstPageIsSmallAndStaysWhereItIs(String path, int width, int mostKilobytes) {
        var page = visit.reader(width, ColorScheme.LIGHT);
        var fetched = fetchedBy(page);
        page.addInitScript("""
                window.shift = 0;
                new PerformanceObserver(list => list.getEntries().forEach(entry => window.shift += entry.value))
                  .observe({type: 'layout-shift', buffered: true});
                new PerformanceObserver(list => list.getEntries().forEach(entry => window.largest = entry.startTime))
                  .observe({type: 'largest-contentful-paint', buffered: true});""");
        page.navigate(visit.address() + path);
        page.waitForLoadState(LoadState.NETWORKIDLE);
        page.evaluate("() => document.fonts.ready.then(() => new Promise(requestAnimationFrame))");
        double shift = ((Number) page.evaluate("() => window.shift")).doubleValue();
        long bytes = fetched.values().stream().mapToLong(Long::longValue).sum();
        boolean hasLetters = (boolean) page.evaluate("() => document.fonts.check('1em \"Groundbass Text\"')");
        double largest = ((Number) page.evaluate("() => window.largest")).doubleValue();
        System.out.printf(
                "%s at %d px: %.1f KB in %d files, shift %.4f, largest paint after %.0f ms%n",
                path, width, bytes / 1000.0, fetched.size(), shift, largest);
        assertThat(hasLetters).as("letters are there").isTrue();
        assertThat(bytes).isBetween(10_000L, 1000L * mostKilobytes);
        assertThat(shift).isLessThan(MOST_SHIFT);
    }

    /** The bytes that come over the line for each request but those for sound, as they come. */
    private static Map<String, Long> fetchedBy(Page page) {
        var line = PlayVisit.slowLine(page, MILLISECONDS, BITS_A_SECOND, BITS_A_SECOND);
        Set<String> sounds = new HashSet<>();
        Map<String, Long> fetched = new HashMap<>();
        line.on("Network.responseReceived", event -> {
            String type = event.getAsJsonObject("response").get("mimeType").getAsString();
            if (type.startsWith("audio/")) {
                sounds.add(event.get("requestId").getAsString());
            }
        });
        line.on("Network.loadingFinished", event -> {
            String request = event.get("requestId").getAsString();
            if (!sounds.contains(request)) {
                fetched.put(request, event.get("encodedDataLength").getAsLong());
            }
        });
        return fetched;
    }
}
