package groundbass.web.desk.walkthrough;

import groundbass.catalog.episode.Episode;
import groundbass.document.DocumentSettings;
import groundbass.document.EpisodeDocument;
import groundbass.document.WalkthroughEdit;
import groundbass.walkthrough.Anchor;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.desk.room.RoomForm;
import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.List;
import java.util.function.UnaryOperator;

/**
 * The educator's words for the steps of an episode, as typed. A step whose field says what the program says, or
 * nothing, has no words of its own.
 */
record WalkthroughForm(String naming, List<WalkthroughEdit> edits) implements RoomForm {
    WalkthroughForm {
        edits = List.copyOf(edits);
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
        return new WalkthroughForm(FormParameters.text(ctx, "naming"), edits);
    }

    /** On one line: a step is a sentence or two, and its notes tell where it stands. */
    private static String tidy(String text) {
        return text.strip().replaceAll("\\s+", " ");
    }

    private static int number(String text) {
        return text.matches("[0-9]{1,6}") ? Integer.parseInt(text) : 0;
    }

    @Override
    public UnaryOperator<EpisodeDocument> change(Episode episode) {
        return this::in;
    }

    private EpisodeDocument in(EpisodeDocument before) {
        var settings = before.settings();
        return before.edit()
                .walkthroughEdits(edits)
                .settings(new DocumentSettings(settings.language(), settings.tempos(), settings.rounds(), naming))
                .done();
    }
}
