package groundbass.web.desk.walkthrough;

import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.script.captions.Script;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.room.Room;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.NotFoundResponse;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** What is said before the camera, large and rolling: the walkthrough, or the script as one wrote it. */
public final class PrompterPage implements PageGroup {
    private static final String PATH = DeskContext.EPISODE + "/prompter";

    private final DeskContext desk;
    private final EpisodeService writing;

    public PrompterPage(DeskContext desk, EpisodeService writing) {
        this.desk = desk;
        this.writing = writing;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, ctx -> show(ctx, Room.WALKTHROUGH, PrompterPage::walkthrough));
        routes.get(PATH + Room.SCRIPT.way(), Role.EDUCATOR, ctx -> show(ctx, Room.SCRIPT, PrompterPage::script));
    }

    private void show(Context ctx, Room of, Function<EpisodeDocument, List<Part>> parts) {
        var episode = desk.episode(ctx);
        var who = desk.educator(ctx);
        var document = writing.draft(who, episode.id())
                .orElseThrow(NotFoundResponse::new)
                .document();
        var told = desk.work(who, () -> parts.apply(document));
        desk.pages().show(ctx, "desk/prompter", new View(DeskContext.path(episode), document.title(), of, told));
    }

    private static List<Part> walkthrough(EpisodeDocument document) {
        return WalkthroughText.of(document).parts().stream()
                .map(part -> new Part(
                        part.number(),
                        part.title(),
                        part.steps().stream().map(WalkthroughView.Row::said).toList()))
                .toList();
    }

    /** Timed captions one by one, other text in its own paragraphs. */
    private static List<Part> script(EpisodeDocument document) {
        var script = Script.read(document.script());
        var said = script.isTimed()
                ? script.cues().stream().map(cue -> cue.text())
                : Stream.of(script.spoken().replace("\r\n", "\n").split("\n\\s*\n"));
        return List.of(new Part(
                0, "", said.map(String::strip).filter(text -> !text.isEmpty()).toList()));
    }

    /** @param path of the lesson on the desk */
    public record View(String path, String title, Room of, List<Part> parts) {
        public boolean script() {
            return of == Room.SCRIPT;
        }
    }

    /**
     * What is said of one line, or the whole script.
     *
     * @param number of the exercise; 0 for the main line
     * @param title of the line; may be empty
     */
    public record Part(int number, String title, List<String> said) {}
}
