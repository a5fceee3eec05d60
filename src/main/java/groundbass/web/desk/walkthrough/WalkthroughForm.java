package groundbass.web.desk.walkthrough;

import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.WalkthroughEdit;
import groundbass.walkthrough.Anchor;
import groundbass.web.desk.access.FormParameters;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;

/**
 * The educator's words for the steps of an episode, as typed. A step whose field says what the program says, or
 * nothing, has no words of its own.
 *
 * @param base the version of the draft that the typing began from
 */
record WalkthroughForm(int base, String naming, List<WalkthroughEdit> edits) {
    WalkthroughForm {
        edits = List.copyOf(edits);
    }

    static WalkthroughForm of(int base, EpisodeDocument document) {
        return new WalkthroughForm(base, document.settings().naming(), document.walkthroughEdits());
    }

    /** Reads the fields of the steps, which come as lists of equal length. */
    static WalkthroughForm read(Context ctx) {
        var anchors = ctx.formParams("anchor");
        var lines = ctx.formParams("line");
        var bars = ctx.formParams("bar");
        var told = ctx.formParams("told");
        var said = ctx.formParams("said");
        int count = Math.min(
                Math.min(anchors.size(), lines.size()), Math.min(bars.size(), Math.min(told.size(), said.size())));
        var edits = new ArrayList<WalkthroughEdit>();
        for (int i = 0; i < count; i++) {
            String words = tidy(said.get(i));
            boolean anchored = Anchor.parse(anchors.get(i)).isPresent();
            if (anchored && !words.isEmpty() && !words.equals(tidy(told.get(i)))) {
                edits.add(new WalkthroughEdit(number(lines.get(i)), anchors.get(i), number(bars.get(i)), words));
            }
        }
        return new WalkthroughForm(FormParameters.number(ctx, "base", 0), FormParameters.text(ctx, "naming"), edits);
    }

    /** On one line: a step is a sentence or two, and its notes tell where it stands. */
    private static String tidy(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }

    private static int number(String text) {
        return text.matches("[0-9]{1,6}") ? Integer.parseInt(text) : 0;
    }

    /** The document with these words in place of those that it had. */
    EpisodeDocument in(EpisodeDocument document) {
        var settings = document.settings();
        return document.edit()
                .walkthroughEdits(edits)
                .settings(new DocumentSettings(settings.language(), settings.tempos(), settings.rounds(), naming))
                .done();
    }
}
