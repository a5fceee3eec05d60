package groundbass.pictures;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Page.GetByRoleOptions;
import com.microsoft.playwright.Page.ScreenshotOptions;
import com.microsoft.playwright.options.AriaRole;
import com.microsoft.playwright.options.Clip;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.site.Config;
import groundbass.web.Browser;
import groundbass.web.Site;
import java.io.File;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * Takes the pictures that README shows: a lesson's page, its sheet and the desk, each from a demonstration that is
 * started for it. Argument: the folder to write to.
 */
final class Pictures {
    private static final String LESSON = "/series/harbour-rounds/6";
    private static final double PATIENCE = Duration.ofMinutes(3).toMillis();
    private static final int WIDTH = 1000;
    private static final int HEIGHT = 1100;
    private static final int MARGIN = 10;
    private static final float SHEET_DPI = 75;

    private final Site site;
    private final Path folder;

    private Pictures(Site site, Path folder) {
        this.site = site;
        this.folder = folder;
    }

    public static void main(String[] args) throws IOException {
        try (var browser = Browser.open();
                var site = Site.open(Pictures::demonstration)) {
            var pictures = new Pictures(site, Path.of(args[0]));
            var page = browser.page(WIDTH, 2 * HEIGHT, ColorScheme.LIGHT);
            pictures.lesson(page);
            pictures.sheet(page);
            pictures.desk(page);
        }
    }

    private static Config demonstration(Config local) {
        return local.withDemo();
    }

    private void lesson(Page page) {
        page.waitForCondition(
                () -> page.navigate(site.address() + LESSON).ok(),
                new Page.WaitForConditionOptions().setTimeout(PATIENCE));
        take(page, "lesson", page.locator("h1").first().boundingBox().y);
    }

    private void sheet(Page page) throws IOException {
        var download = page.waitForDownload(
                () -> page.locator("a[href$='sheet.pdf']").first().click());
        try (var sheet = Loader.loadPDF(download.path().toFile())) {
            var picture = new PDFRenderer(sheet).renderImageWithDPI(0, SHEET_DPI);
            ImageIO.write(picture, "png", file("sheet"));
        }
    }

    private void desk(Page page) {
        var invitation = site.groundbass().setUpNotice().demo().orElseThrow();
        page.navigate(site.address() + "/desk/sign-in");
        page.getByLabel("E-mail address").fill(invitation.email());
        page.getByLabel("Password").fill(invitation.password());
        page.getByRole(AriaRole.MAIN).getByRole(AriaRole.BUTTON).first().click();
        page.getByRole(AriaRole.LINK, new GetByRoleOptions().setName("Last Lantern Home"))
                .first()
                .click();
        page.locator("[data-bar-spot='3']").first().click();
        take(page, "desk", page.locator(".room-head").boundingBox().y);
    }

    private void take(Page page, String name, double top) {
        page.screenshot(new ScreenshotOptions()
                .setClip(new Clip(0, top - MARGIN, WIDTH, HEIGHT))
                .setPath(file(name).toPath()));
    }

    private File file(String name) {
        return folder.resolve(name + ".png").toFile();
    }
}
