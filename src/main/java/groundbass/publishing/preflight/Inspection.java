package groundbass.publishing.preflight;

import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.EpisodeId;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.lesson.LessonText;
import groundbass.publishing.address.Addresses;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** One look at a lesson: what is to be said of it at each {@link Checkpoint}. Its texts are proofread once. */
public final class Inspection {
    private final Addresses addresses;
    private final EpisodeId episode;
    private final LessonText text;
    private final Around around;
    private final List<LessonRemark> typed;

    Inspection(Addresses addresses, EpisodeId episode, LessonText text, Around around) {
        this.addresses = addresses;
        this.episode = episode;
        this.text = text;
        this.around = around;
        this.typed = typed(text);
    }

    /** What is wrong with the form of the document, and what is to be said of its lines and drums. */
    private static List<LessonRemark> typed(LessonText text) {
        var document = text.document();
        var remarks = new ArrayList<LessonRemark>();
        DocumentCheck.problems(document).forEach(problem -> remarks.add(of(problem)));
        remarks.addAll(TextRemarks.of("mainLine", document.mainLine(), text.main()));
        for (int i = 0; i < text.exercises().size(); i++) {
            var source = document.exercises().get(i);
            remarks.addAll(TextRemarks.of(
                    "exercises[" + i + "]", source, text.exercises().get(i)));
        }
        text.groove().ifPresent(reading -> remarks.addAll(TextRemarks.of("groove", reading)));
        return remarks;
    }

    private static LessonRemark of(FieldProblem problem) {
        return LessonRemark.blocks(
                Checkpoint.of(problem.field()), problem.field(), new Message(problem.key(), problem.args()));
    }

    /** All that is to be said, in the order of the checkpoints. */
    public List<LessonRemark> remarks() {
        return Stream.of(Checkpoint.values())
                .flatMap(point -> remarks(point).stream())
                .toList();
    }

    List<LessonRemark> remarks(Checkpoint point) {
        var first = typed.stream().filter(remark -> remark.point() == point);
        return Stream.concat(first, others(point).stream()).toList();
    }

    private List<LessonRemark> others(Checkpoint point) {
        return switch (point) {
            case DETAILS, LINES, FINDINGS, SOUND -> List.of(); // all of it was typed
            case RECORDINGS -> RecordingRemarks.of(text, around.missing().recordings());
            case NOTES -> NoteRemarks.broken(text, around.missing().pictures());
            case PICTURES -> NoteRemarks.pictures(text);
            case LINKS -> links();
            case WALKTHROUGH -> Preflight.lostWords(text);
            case RIGHTS -> rights();
            case CAUTIONS -> Preflight.cautions(document().settings());
            case TEACHER ->
                around.imprint().flatMap(Preflight::imprint).stream().toList();
            case ADDRESS -> Preflight.address(addresses, episode);
            case MAIL -> around.mail().map(Preflight::mail).orElseGet(List::of);
            case RELEASE -> around.difference().map(Preflight::release).stream().toList();
        };
    }

    private List<LessonRemark> links() {
        var tried = around.links().map(links -> LinkRemarks.tried(document(), links));
        return Stream.concat(LinkRemarks.of(document()).stream(), tried.stream().flatMap(List::stream))
                .toList();
    }

    private List<LessonRemark> rights() {
        var rights = document().rights();
        var ended = around.day().flatMap(day -> Preflight.ended(rights, day));
        return Stream.concat(Preflight.rights(rights).stream(), ended.stream()).toList();
    }

    /** What is looked at there. */
    public Message looked(Checkpoint point) {
        String key = "publishing.looked." + point.word();
        return switch (point) {
            case DETAILS, SOUND, FINDINGS, PICTURES, WALKTHROUGH, RIGHTS, TEACHER, RELEASE -> Message.of(key);
            case LINES -> Message.of(key, document().exercises().size());
            case RECORDINGS -> Message.of(key, document().backingTracks().size());
            case NOTES -> Message.of(key, NoteRemarks.pieceCount(document().notes()));
            case LINKS ->
                around.links()
                        .flatMap(links -> LinkRemarks.looked(document(), links))
                        .orElseGet(() -> Message.of(key, LinkRemarks.count(document())));
            case CAUTIONS -> Message.of(key, document().settings().language());
            case ADDRESS -> Message.of(key, addresses.episode(episode));
            case MAIL -> Message.of(key, around.mail().map(MailOutlook::readers).orElse(0));
        };
    }

    private EpisodeDocument document() {
        return text.document();
    }
}
