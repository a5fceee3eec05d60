package groundbass.cli;

import groundbass.text.Messages;
import java.util.List;

/** The page of the soundcheck: one file that needs nothing but the sounds beside it. */
final class SoundcheckPage {
    private static final String STYLE = """
            body { font: 1.05rem/1.5 serif; max-width: 46rem; margin: 2rem auto; padding: 0 1rem;
              color: #222; background: #fffdf8 }
            .caution { border-left: .4rem solid #a33; padding: .5rem 1rem; background: #fbeeea }
            dt { font-weight: bold; margin-top: 1.2rem }
            dd { margin: 0 }
            audio { display: block; width: 100%; margin-top: .3rem }
            """;

    /** One sound: what it is, what to listen for, and the file. */
    record Example(String title, String listen, String file) {}

    record Section(String title, List<Example> examples) {
        Section {
            examples = List.copyOf(examples);
        }
    }

    private SoundcheckPage() {}

    static String of(Messages messages, List<Section> sections) {
        var page = new StringBuilder();
        String title = escaped(messages.say("soundcheck.title"));
        page.append("<!doctype html>\n<html lang=\"")
                .append(messages.locale().toLanguageTag())
                .append("\">\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(title)
                .append("</title>\n<style>\n")
                .append(STYLE)
                .append("</style>\n<h1>")
                .append(title)
                .append("</h1>\n<p>")
                .append(escaped(messages.say("soundcheck.lead")))
                .append("</p>\n<p class=\"caution\">")
                .append(escaped(messages.say("cautions.hearing.1")))
                .append("</p>\n");
        sections.forEach(section -> add(page, section));
        return page.append("</html>\n").toString();
    }

    private static void add(StringBuilder page, Section section) {
        page.append("<h2>").append(escaped(section.title())).append("</h2>\n<dl>\n");
        for (var example : section.examples()) {
            page.append("<dt>")
                    .append(escaped(example.title()))
                    .append("</dt>\n<dd>")
                    .append(escaped(example.listen()))
                    .append("<audio controls preload=\"none\" aria-label=\"")
                    .append(escaped(example.title()))
                    .append("\" src=\"")
                    .append(escaped(example.file()))
                    .append("\"></audio></dd>\n");
        }
        page.append("</dl>\n");
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
