package groundbass.web.view;

import java.util.Map;
import org.thymeleaf.context.IExpressionContext;
import org.thymeleaf.linkbuilder.StandardLinkBuilder;

/** Lets {@code @{/path}} work outside a request, and gives an asset's address the version of its content. */
final class SiteLinks extends StandardLinkBuilder {
    private final Assets assets;

    SiteLinks(Assets assets) {
        this.assets = assets;
    }

    @Override
    protected String computeContextPath(IExpressionContext context, String base, Map<String, Object> parameters) {
        return "";
    }

    @Override
    protected String processLink(IExpressionContext context, String link) {
        return link.startsWith(Assets.PATH) ? assets.versioned(link.substring(Assets.PATH.length())) : link;
    }
}
