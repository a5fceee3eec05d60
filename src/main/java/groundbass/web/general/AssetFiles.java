package groundbass.web.general;

import groundbass.web.answer.CachedResponse;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import groundbass.web.view.Assets;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;

/** Serves the assets: for good under an address that names their version, else to be asked for again. */
public final class AssetFiles implements PageGroup {
    private static final String ICON = "icon.svg";

    private final Assets assets;

    public AssetFiles(Assets assets) {
        this.assets = assets;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/assets/{name}", Role.ANYONE, ctx -> send(ctx, ctx.pathParam("name")));
        routes.get("/favicon.ico", Role.ANYONE, ctx -> send(ctx, ICON));
    }

    private void send(Context ctx, String name) {
        var asset = assets.find(name).orElseThrow(NotFoundResponse::new);
        boolean named = asset.version().equals(ctx.queryParam("v"));
        asset.send(ctx, named ? CachedResponse.FOR_GOOD : CachedResponse.ASK_AGAIN);
    }
}
