package groundbass.web;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.extension.AfterAllCallback;
import org.junit.jupiter.api.extension.AfterEachCallback;
import org.junit.jupiter.api.extension.BeforeAllCallback;
import org.junit.jupiter.api.extension.ExtensionContext;

/**
 * A browser and a site for the tests of one class, as a static {@code @RegisterExtension}: opened before them, closed
 * after them. What a test has opened in the browser is closed after that test. Not thread-safe.
 */
public abstract class BrowserFixture implements BeforeAllCallback, AfterEachCallback, AfterAllCallback {
    private static final int HEIGHT = 900;

    private final List<String> complaints = new ArrayList<>();
    private Browser browser;
    private boolean siteIsOpen;

    /** Called once the browser is there. */
    protected abstract void openSite();

    protected abstract void closeSite();

    /** Where the site is, without a slash at the end. */
    public abstract String address();

    @Override
    public final void beforeAll(ExtensionContext test) {
        browser = Browser.open();
        openSite();
        siteIsOpen = true;
    }

    @Override
    public final void afterEach(ExtensionContext test) {
        browser.closePages();
        complaints.clear();
    }

    /** Where a machine has no browser, nothing was opened. */
    @Override
    public final void afterAll(ExtensionContext test) {
        if (siteIsOpen) {
            closeSite();
        }
        if (browser != null) {
            browser.close();
        }
    }

    /** A new reader, whose complaints are kept. */
    public Page reader(int width, ColorScheme scheme) {
        var page = browser.page(width, HEIGHT, scheme);
        page.onConsoleMessage(message -> complaints.add(message.text()));
        page.onPageError(complaints::add);
        return page;
    }

    /** What the browser itself has said of the pages of this test: refused styles, faults of scripts. */
    public final List<String> complaints() {
        return List.copyOf(complaints);
    }
}
