package groundbass.web.general;

import groundbass.catalog.settings.SiteSettings;
import groundbass.text.Message;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.Vary;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Assets;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.function.Supplier;

/** The site on a reader's own device: how it is installed, what serves lessons without a net, the list of those kept. */
public final class DevicePages implements PageGroup {
    private static final String WORKER = "worker.js";
    private static final String NO_WORKER = "worker-off.js";
    private static final String NEVER_CHANGES = "";

    private final Pages pages;
    private final Supplier<SiteSettings> settings;
    private final Assets assets;
    private final boolean keeping;

    /** @param keeping whether lessons may be kept; where not, devices that have some are told to let them go */
    public DevicePages(Pages pages, Supplier<SiteSettings> settings, Assets assets, boolean keeping) {
        this.pages = pages;
        this.settings = settings;
        this.assets = assets;
        this.keeping = keeping;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/manifest.webmanifest", Role.ANYONE, this::manifest);
        routes.get("/" + WORKER, Role.ANYONE, this::worker);
        if (keeping) {
            routes.get(
                    "/kept",
                    Role.ANYONE,
                    ctx -> pages.showShared(ctx, "student/kept", NEVER_CHANGES, reader -> new GeneralPages.Plain()));
        }
    }

    private void manifest(Context ctx) {
        var reader = pages.reader(ctx);
        String lead = reader.say(Message.of("home.lead"));
        ctx.json(InstalledSite.of(settings.get().siteName(), lead, reader.language(), assets));
        Vary.on(ctx, "Accept-Language");
        ctx.header("Cache-Control", CachedResponse.ASK_AGAIN).contentType(InstalledSite.MEDIA_TYPE);
    }

    /** Below the root, so that the whole site is its scope, and asked for anew each time that a browser looks for another. */
    private void worker(Context ctx) {
        String worker = keeping ? WORKER : NO_WORKER;
        assets.find(worker).orElseThrow(NotFoundResponse::new).send(ctx, CachedResponse.ASK_AGAIN);
    }
}
