package groundbass.web;

import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.BrowserContext;
import com.microsoft.playwright.BrowserType;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Playwright;
import com.microsoft.playwright.assertions.PlaywrightAssertions;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.ReducedMotion;
import groundbass.OutsideTools;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * A headless Chromium of this machine, one for all tests of a process. Tests that use it carry {@code @Tag("browser")}; it
 * is {@code $CHROMIUM} or else one of {@link OutsideTools}, which says what happens where there is none. The one without a
 * window's frame comes first: it draws the same pages and spends half the time. Not thread-safe.
 */
public final class Browser implements AutoCloseable {
    /** WCAG 2.2, levels A and AA, as the accessibility checker tags its rules. */
    private static final List<String> STANDARD = List.of("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa");

    /** How long anything may take until it is there: generous, since a build machine does other things besides. */
    private static final double PATIENCE_MILLISECONDS = 30_000;

    /** Started once: that takes seconds, and readers know nothing of one another. */
    private static com.microsoft.playwright.Browser started;

    private final com.microsoft.playwright.Browser chromium;

    private Browser(com.microsoft.playwright.Browser chromium) {
        this.chromium = chromium;
    }

    /** The browser of this process, or skips the test. */
    public static Browser open() {
        if (started == null) {
            started = start(program());
        }
        return new Browser(started);
    }

    private static com.microsoft.playwright.Browser start(Path program) {
        PlaywrightAssertions.setDefaultAssertionTimeout(PATIENCE_MILLISECONDS);
        var playwright = Playwright.create(
                new Playwright.CreateOptions().setEnv(Map.of("PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD", "1")));
        Runtime.getRuntime().addShutdownHook(new Thread(playwright::close, "browser"));
        var options = new BrowserType.LaunchOptions()
                .setExecutablePath(program)
                .setArgs(List.of("--no-sandbox", "--disable-gpu", "--disable-background-networking"));
        return playwright.chromium().launch(options);
    }

    private static Path program() {
        return Stream.ofNullable(System.getenv("CHROMIUM"))
                .map(Path::of)
                .filter(Files::isExecutable)
                .findFirst()
                .orElseGet(() -> OutsideTools.here().need("chromium-headless-shell", "chromium", "chromium-browser"));
    }

    /** A new reader with no cookies, in English, on a desk screen. */
    public Page page() {
        return page(1280, 900, ColorScheme.LIGHT);
    }

    /** A new reader with a screen of that size, in CSS pixels. */
    public Page page(int width, int height, ColorScheme scheme) {
        var options = new com.microsoft.playwright.Browser.NewContextOptions()
                .setViewportSize(width, height)
                .setColorScheme(scheme)
                .setReducedMotion(ReducedMotion.REDUCE) // a page that still scrolls slips away under a press
                .setLocale("en")
                .setTimezoneId("Europe/Vienna");
        BrowserContext reader = chromium.newContext(options);
        reader.setDefaultTimeout(PATIENCE_MILLISECONDS);
        return reader.newPage();
    }

    /** Ends all its readers, with every page of theirs and the processes that draw them. */
    public void closePages() {
        List.copyOf(chromium.contexts()).forEach(BrowserContext::close);
    }

    /** Goes to an address, which has to answer with a page, and not with one that says what is wrong. */
    public static void open(Page page, String address) {
        assertThat(page.navigate(address).status()).as(address).isEqualTo(200);
    }

    /** What the accessibility checker finds wrong with the page as it stands, a line each. */
    public static List<String> barriers(Page page) {
        return new AxeBuilder(page)
                        .setLegacyMode(true) // our pages have no frames, for which alone it would open a second page
                        .withTags(STANDARD)
                        .analyze()
                        .getViolations()
                        .stream()
                        .map(found -> found.getId() + ": " + found.getHelp() + " " + found.getNodes())
                        .toList();
    }

    /** The same page on another screen and in the other scheme, without loading it anew. */
    public static void turn(Page page, int width, ColorScheme scheme) {
        page.setViewportSize(width, 900);
        page.emulateMedia(new Page.EmulateMediaOptions().setColorScheme(scheme));
    }

    /** Types into a field or editor, in the place of all that is there. */
    public static void write(Page page, String label, String text) {
        page.getByLabel(label, new Page.GetByLabelOptions().setExact(true)).focus();
        page.keyboard().press("Control+a");
        page.keyboard().insertText(text);
    }

    /** By how many pixels the page is wider than its window; 0 for a page that needs no sideways scrolling. */
    public static int overflow(Page page) {
        return (int) page.evaluate("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
    }

    /** Ends its readers; the program stays for the tests that come after. */
    @Override
    public void close() {
        closePages();
    }
}
