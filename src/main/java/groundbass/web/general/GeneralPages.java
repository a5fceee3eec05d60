package groundbass.web.general;

import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;

/** Privacy and cautions: the same for everyone. */
public final class GeneralPages implements PageGroup {
    private static final String NEVER_CHANGES = "";

    private final Pages pages;

    public GeneralPages(Pages pages) {
        this.pages = pages;
    }

    @Override
    public void addTo(Routes routes) {
        add(routes, "/privacy", "general/privacy");
        add(routes, "/cautions", "general/cautions");
    }

    private void add(Routes routes, String path, String template) {
        routes.get(path, Role.ANYONE, ctx -> pages.showShared(ctx, template, NEVER_CHANGES, reader -> new Plain()));
    }

    /** A page whose every word is in the bundles. */
    public record Plain() {}
}
