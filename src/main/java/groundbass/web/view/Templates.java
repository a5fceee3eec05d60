package groundbass.web.view;

import java.util.Map;
import java.util.Optional;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.Context;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/**
 * Renders {@code templates/NAME.html}. A template sees {@code view} (the page's own record), {@code frame}, {@code
 * reader} and {@code preview} (a {@link LinkPreview} where the view has one); nothing else, so that a page can be rendered outside a request and kept. Thread-safe.
 */
public final class Templates {
    private final TemplateEngine engine = new TemplateEngine();

    public Templates(Assets assets) {
        var files = new ClassLoaderTemplateResolver(Templates.class.getClassLoader());
        files.setPrefix("templates/");
        files.setSuffix(".html");
        files.setTemplateMode(TemplateMode.HTML);
        files.setCharacterEncoding("UTF-8");
        engine.setTemplateResolver(files);
        engine.setMessageResolver(new BundleMessages());
        engine.setLinkBuilder(new SiteLinks(assets));
    }

    /** The page as HTML. {@code view} is a public record. */
    public String render(String name, Record view, PageFrame frame, Reader reader) {
        var preview = view instanceof LinkPreview.Shown shown ? Optional.of(shown.preview()) : Optional.empty();
        var variables = Map.<String, Object>of("view", view, "frame", frame, "reader", reader, "preview", preview);
        return engine.process(name, new Context(reader.locale(), variables));
    }
}
