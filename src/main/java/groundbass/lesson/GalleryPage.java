package groundbass.lesson;

import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Locale;

/** The gallery as one HTML page: its style inside, named by its digest in a policy that allows nothing else. */
final class GalleryPage {
    private static final String STYLE = """
            :root { color-scheme: light dark; }
            body { max-width: 60rem; margin: 2rem auto; padding: 0 1rem; font: 1rem/1.5 sans-serif; }
            section { margin-block: 2.5rem; break-inside: avoid; }
            h2 { margin-bottom: 0.25rem; }
            p { margin: 0.25rem 0; max-width: 45rem; }
            svg { display: block; width: 100%; height: auto; margin-block: 0.75rem; }
            small { opacity: 0.8; }
            pre { font-size: 0.9rem; }
            """;

    private final StringBuilder sections = new StringBuilder();
    private final String title;

    GalleryPage(String title) {
        this.title = title;
    }

    void add(Exhibit exhibit, List<RuleBook.Rule> rules, String svg) {
        sections.append("<section>\n<h2>").append(escaped(exhibit.title())).append("</h2>\n<p>");
        sections.append(escaped(exhibit.look())).append("</p>\n");
        rules.forEach(this::add);
        sections.append(svg);
        sections.append("\n<details><summary>Line text</summary>\n<pre>").append(escaped(exhibit.text()));
        sections.append("</pre></details>\n</section>\n");
    }

    private void add(RuleBook.Rule rule) {
        sections.append("<p><small>").append(escaped(rule.sentence())).append(" Source: ");
        sections.append(escaped(rule.source())).append("</small></p>\n");
    }

    String html() {
        return String.format(Locale.ROOT, """
                <!DOCTYPE html>
                <html lang="en">
                <head>
                <meta charset="utf-8">
                <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'sha256-%s'">
                <meta name="viewport" content="width=device-width, initial-scale=1">
                <title>%s</title>
                <style>%s</style>
                </head>
                <body>
                <h1>%s</h1>
                %s</body>
                </html>
                """, digest(), escaped(title), STYLE, escaped(title), sections);
    }

    private static String digest() {
        return Base64.getEncoder().encodeToString(Sha256.digest().digest(STYLE.getBytes(StandardCharsets.UTF_8)));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;");
    }
}
