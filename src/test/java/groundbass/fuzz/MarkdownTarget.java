package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.web.view.NoteViews;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Notes become a page without scripts. */
final class MarkdownTarget implements Target {
    /** What a browser would run, as it stands in what the sanitizer writes: quoted values, one space before a name. */
    private static final List<String> NEVER =
            List.of("<script", "=\"javascript:", "=\"data:", " onerror=", " onload=", "<iframe", "<object", "<style");

    @Override
    public List<byte[]> examples() {
        var all = new ArrayList<>(Examples.files(Path.of("seed-data"), "notes.md"));
        all.addAll(
                Examples.texts(
                        "# A\n\n* b **c** `d`\n\n> e [f](https://g.example \"h\") ![i](bars:1-2)\n\n```\nj\n```\n\n1. k\n   - l\n\n---\n",
                        "<script>alert(1)</script> <img src=x onerror=alert(1)> [a](javascript:alert(1)) <a href=\"data:text/html,x\">"));
        return all;
    }

    @Override
    public List<String> words() {
        return List.of(
                "![](bars:1)",
                "![](bar:3:1-2)",
                "[",
                "](",
                ")",
                "**",
                "_",
                "`",
                "```",
                "#",
                ">",
                "* ",
                "<script>",
                "&#106;avascript:",
                "<svg/onload=",
                "\n\n",
                "\\",
                "&lt;");
    }

    @Override
    public void take(byte[] input, Random random) {
        String html = NoteViews.html(new String(input, UTF_8), 3, List.of(), List.of());
        String small = html.replaceAll("(?s)>[^<]*<", "><").toLowerCase(Locale.ROOT);
        for (String never : NEVER) {
            if (small.contains(never)) {
                throw new AssertionError(never + " in " + html);
            }
        }
    }
}
