package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeService;
import groundbass.document.EpisodeDocument;
import groundbass.document.LineSource;
import groundbass.web.answer.EntityTag;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.function.BiFunction;
import java.util.function.Function;
import java.util.function.UnaryOperator;

/**
 * What is being typed of a lesson: all of it as an object, its line and its notes as the texts that they are. It is saved
 * right or wrong, as at the desk; what is wrong with it is asked of {@link PreflightOperations}.
 */
final class DraftOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/lessons/{lesson}/draft";
    private static final String MERGE_PATCH = "application/merge-patch+json"; // RFC 7396

    private final Door door;
    private final Addressed addressed;
    private final EpisodeService writing;

    DraftOperations(Door door, Addressed addressed, EpisodeService writing) {
        this.door = door;
        this.addressed = addressed;
        this.writing = writing;
    }

    /** A part of a draft that is a text. */
    private record TextPart(
            String mediaType,
            Function<EpisodeDocument, String> text,
            BiFunction<EpisodeDocument, String, EpisodeDocument> change) {
        byte[] of(EpisodeDocument document) {
            return text.apply(document).getBytes(StandardCharsets.UTF_8);
        }

        EntityTag tag(EpisodeDocument document) {
            return EntityTag.ofContent(of(document));
        }
    }

    private static final TextPart LINE =
            new TextPart("text/plain", document -> document.mainLine().text(), (before, text) -> before.edit()
                    .mainLine(new LineSource(before.mainLine().name(), text))
                    .done());

    /** RFC 7763. */
    private static final TextPart NOTES =
            new TextPart("text/markdown", EpisodeDocument::notes, (before, text) -> before.edit()
                    .notes(text)
                    .done());

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::show));
        routes.patch(PATH, Role.EXEMPT, door.open(ProgramScope.WRITE, this::change));
        add(routes, PATH + "/line", LINE);
        add(routes, PATH + "/notes", NOTES);
    }

    private void add(Routes routes, String path, TextPart part) {
        routes.get(path, Role.EXEMPT, door.open(ProgramScope.READ, call -> show(call, part)));
        routes.put(path, Role.EXEMPT, door.open(ProgramScope.WRITE, call -> replace(call, part)));
    }

    private EpisodeDocument document(Call call) {
        return writing.draft(call.who(), addressed.lesson(call).id())
                .orElseThrow(NotFoundResponse::new)
                .document();
    }

    private void show(Call call) {
        Answers.show(call, DraftView.of(document(call)));
    }

    private void show(Call call, TextPart part) {
        Answers.show(call, part.mediaType() + "; charset=utf-8", part.of(document(call)));
    }

    private void change(Call call) throws IOException {
        addressed.lesson(call);
        var patch = ProgramJson.object(Incoming.bytes(call.ctx(), MERGE_PATCH));
        var saved = save(call, document -> Answers.tag(DraftView.of(document)), before -> ProgramJson.read(
                        ProgramJson.merge(ProgramJson.tree(DraftView.of(before)), patch), DraftView.class)
                .in(before));
        Answers.changed(call, DraftView.of(saved));
    }

    /** The text is kept as it came, so its tag is told (RFC 9110 section 9.3.4). */
    private void replace(Call call, TextPart part) throws IOException {
        addressed.lesson(call);
        String text = Incoming.text(call.ctx(), part.mediaType());
        var saved = save(call, part::tag, before -> part.change().apply(before, text));
        Answers.nothing(call);
        call.ctx().header("ETag", part.tag(saved).toString());
    }

    /** Saves a change of what the program has seen; 412 where something else stands there by now. */
    private EpisodeDocument save(
            Call call, Function<EpisodeDocument, EntityTag> tag, UnaryOperator<EpisodeDocument> change) {
        var seen = Preconditions.of(call.ctx());
        var lesson = addressed.lesson(call);
        var saved = writing.saveDraft(
                        call.who(),
                        lesson.id(),
                        (stored, changed) -> seen.hold(Optional.of(tag.apply(stored))),
                        before -> bounded(change.apply(before)))
                .result()
                .orElseThrow(NotFoundResponse::new);
        if (saved instanceof DraftSave.Saved kept) {
            return kept.draft().document();
        }
        throw Preconditions.failed();
    }

    /** Or it would grow bit by bit to what no change may have. */
    private static EpisodeDocument bounded(EpisodeDocument document) {
        if (ProgramJson.write(DraftView.of(document)).length > Incoming.MOST) {
            throw Refusal.of(HttpStatus.UNPROCESSABLE_CONTENT, "program.refused.draft", Incoming.MOST);
        }
        return document;
    }
}
