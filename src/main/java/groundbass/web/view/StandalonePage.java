package groundbass.web.view;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import org.thymeleaf.TemplateEngine;
import org.thymeleaf.context.Context;
import org.thymeleaf.templatemode.TemplateMode;
import org.thymeleaf.templateresolver.ClassLoaderTemplateResolver;

/**
 * HTML for a file of its own, opened without a server: the style stands inside, named by its digest in a policy that lets
 * nothing else be fetched but sounds from the same folder.
 */
public final class StandalonePage {
    private static final String FOLDER = "groundbass/web/standalone/";
    private static final String STYLE = style();
    private static final String POLICY =
            "default-src 'none'; media-src 'self' file:; style-src 'sha256-" + digest() + "'";
    private static final TemplateEngine ENGINE = engine();

    private StandalonePage() {}

    /** @param view what the template {@code name} sees under this name */
    public static String of(String name, Locale locale, Record view) {
        Map<String, Object> variables =
                Map.of("view", view, "style", STYLE, "policy", POLICY, "lang", locale.toLanguageTag());
        return ENGINE.process(name, new Context(locale, variables));
    }

    private static TemplateEngine engine() {
        var files = new ClassLoaderTemplateResolver(StandalonePage.class.getClassLoader());
        files.setPrefix(FOLDER);
        files.setSuffix(".html");
        files.setTemplateMode(TemplateMode.HTML);
        files.setCharacterEncoding("UTF-8");
        var engine = new TemplateEngine();
        engine.setTemplateResolver(files);
        return engine;
    }

    private static String style() {
        try (var in = StandalonePage.class.getClassLoader().getResourceAsStream(FOLDER + "page.css")) {
            return new String(Objects.requireNonNull(in).readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String digest() {
        return Base64.getEncoder().encodeToString(Sha256.digest().digest(STYLE.getBytes(StandardCharsets.UTF_8)));
    }
}
