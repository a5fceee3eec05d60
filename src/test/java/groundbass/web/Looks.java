package groundbass.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.nio.file.Path;
import java.util.Locale;

/**
 * Pictures of pages for somebody to look at, in {@code target/looks}. Nothing is asserted of them, so they are made
 * only where they are asked for: {@code mvn test -Dlooks}.
 */
public final class Looks {
    private static final boolean WANTED = System.getProperty("looks") != null;

    private Looks() {}

    /** The page as it stands, from its head to its foot. */
    public static void keep(Page page, String name, int width, ColorScheme scheme) {
        if (WANTED) {
            String file = name.replaceFirst("^/", "").replace('/', '-').toLowerCase(Locale.ROOT);
            page.screenshot(new Page.ScreenshotOptions()
                    .setFullPage(true)
                    .setPath(Path.of("target", "looks", file + "-" + width + "-" + scheme + ".png")));
        }
    }
}
