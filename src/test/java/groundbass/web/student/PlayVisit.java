package groundbass.web.student;

import com.google.gson.JsonArray;
import com.google.gson.JsonObject;
import com.microsoft.playwright.CDPSession;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.options.ColorScheme;
import groundbass.web.BrowserFixture;
import groundbass.web.Site;

/** The browser of a student, on a site with a lesson that can be practised ({@link Rehearsal}). */
final class PlayVisit extends BrowserFixture {
    static final String LESSON = "/series/" + Shelf.SERIES + "/1";
    private static final int USUAL_WIDTH = 1280;
    /** In which a finger goes its way. */
    private static final int STEPS = 8;

    private Site site;
    private Shelf shelf;

    @Override
    protected void openSite() {
        site = Site.open();
        shelf = Rehearsal.on(site);
    }

    @Override
    protected void closeSite() {
        site.close();
    }

    @Override
    public String address() {
        return site.address();
    }

    Site site() {
        return site;
    }

    Shelf shelf() {
        return shelf;
    }

    Page reader() {
        return reader(USUAL_WIDTH, ColorScheme.LIGHT);
    }

    /** The lesson, where both its lines can be practised. */
    Page lesson() {
        return lesson(reader(), "");
    }

    Page lesson(int width, ColorScheme scheme) {
        return lesson(reader(width, scheme), "");
    }

    /** @param query with its question mark, or nothing */
    Page lesson(Page page, String query) {
        page.navigate(address() + LESSON + query);
        page.locator(".practice-go").nth(1).waitFor();
        return page;
    }

    /** One finger goes from a place of the window to another, as Chromium's protocol has it (Input.dispatchTouchEvent). */
    static void drag(Page page, double fromX, double fromY, double toX, double toY) {
        var device = page.context().newCDPSession(page);
        touch(device, "touchStart", fromX, fromY);
        for (int step = 1; step <= STEPS; step++) {
            double part = (double) step / STEPS;
            touch(device, "touchMove", fromX + part * (toX - fromX), fromY + part * (toY - fromY));
        }
        var end = new JsonObject();
        end.addProperty("type", "touchEnd");
        end.add("touchPoints", new JsonArray());
        device.send("Input.dispatchTouchEvent", end);
        device.detach();
    }

    private static void touch(CDPSession device, String type, double x, double y) {
        var point = new JsonObject();
        point.addProperty("x", x);
        point.addProperty("y", y);
        var points = new JsonArray();
        points.add(point);
        var event = new JsonObject();
        event.addProperty("type", type);
        event.add("touchPoints", points);
        device.send("Input.dispatchTouchEvent", event);
    }

    /** What the page fetches comes over a line of so many bits a second, and as many milliseconds late. */
    static CDPSession slowLine(Page page, int milliseconds, int bitsASecond, int bitsASecondUp) {
        var line = page.context().newCDPSession(page);
        line.send("Network.enable");
        var conditions = new JsonObject();
        conditions.addProperty("offline", false);
        conditions.addProperty("latency", milliseconds);
        conditions.addProperty("downloadThroughput", bitsASecond / 8);
        conditions.addProperty("uploadThroughput", bitsASecondUp / 8);
        line.send("Network.emulateNetworkConditions", conditions);
        return line;
    }
}
