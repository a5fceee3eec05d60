package groundbass.publishing;

import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.Imprint;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.lesson.LessonText;
import groundbass.lesson.NotePieces;
import groundbass.publishing.LessonRemark.Weight;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Whatever should be right before a lesson goes out: what a revision asks for, that every text can be read, what a hand
 * can play, whose music it is, that no word of the educator's is lost, and what is printed for good.
 */
public final class Preflight {
    private static final String NOTES = "notes";

    private final Addresses addresses;

    public Preflight(Addresses addresses) {
        this.addresses = addresses;
    }

    /** All remarks, in the order of the lesson's form. */
    public List<LessonRemark> remarks(EpisodeId episode, EpisodeDocument document) {
        return remarks(episode, LessonText.read(document));
    }

    List<LessonRemark> remarks(EpisodeId episode, LessonText text) {
        var document = text.document();
        var remarks = new ArrayList<LessonRemark>();
        DocumentCheck.problems(document).forEach(problem -> remarks.add(of(problem)));
        lines(text, remarks);
        groove(text, remarks);
        rights(document, remarks);
        pieces(text, remarks);
        lostWords(text, remarks);
        address(episode, remarks);
        return List.copyOf(remarks);
    }

    private static LessonRemark of(FieldProblem problem) {
        return blocks(problem.field(), new Message(problem.key(), problem.args()));
    }

    private static void lines(LessonText text, List<LessonRemark> remarks) {
        remarks.addAll(TextRemarks.of("mainLine", text.document().mainLine(), text.main()));
        for (int i = 0; i < text.exercises().size(); i++) {
            var source = text.document().exercises().get(i);
            remarks.addAll(TextRemarks.of(
                    "exercises[" + i + "]", source, text.exercises().get(i)));
        }
    }

    private static void groove(LessonText text, List<LessonRemark> remarks) {
        text.groove().ifPresent(reading -> remarks.addAll(TextRemarks.of("groove", reading)));
    }

    private static void rights(EpisodeDocument document, List<LessonRemark> remarks) {
        if (document.rights().statement().isBlank()) {
            remarks.add(blocks("rights.statement", Message.of("publishing.problem.rights")));
        }
        clearance(document.rights().clearance()).ifPresent(remarks::add);
    }

    /** While the question is open or permission awaited, nothing goes out. */
    static Optional<LessonRemark> clearance(Clearance clearance) {
        if (clearance.isSettled()) {
            return Optional.empty();
        }
        String key = clearance == Clearance.OPEN ? "publishing.problem.clearance.open" : "publishing.problem.clearance";
        return Optional.of(blocks("rights.clearance", Message.of(key)));
    }

    private static void pieces(LessonText text, List<LessonRemark> remarks) {
        if (text.main().hasErrors() || text.document().mainLine().isBlank()) {
            return; // which bars there are is clear once the line can be read
        }
        var line = text.main().line();
        int last = line.firstNumber() + line.bars().size() - 1;
        NotePieces.broken(text.document().notes(), line).stream()
                .map(piece ->
                        Message.of("publishing.problem.piece", piece.line(), piece.address(), line.firstNumber(), last))
                .forEach(message -> remarks.add(blocks(NOTES, message)));
    }

    private static void lostWords(LessonText text, List<LessonRemark> remarks) {
        if (text.main().hasErrors()) {
            return; // which words are lost is clear once the line can be read
        }
        var lesson = text.lesson();
        for (int line = 0; line <= lesson.exercises().size(); line++) {
            lesson.walkthrough(line)
                    .lost()
                    .forEach(edit -> remarks.add(new LessonRemark(
                            Weight.ASKS,
                            "walkthrough",
                            Message.of("publishing.remark.lost", edit.bar(), edit.sentence()),
                            edit.sentence())));
        }
    }

    private void address(EpisodeId episode, List<LessonRemark> remarks) {
        String printed = addresses.episode(episode);
        if (!addresses.isTrial() && LocalAddress.is(printed)) {
            remarks.add(new LessonRemark(
                    Weight.ASKS, "address", Message.of("publishing.remark.address", printed), printed));
        }
    }

    /** Nothing goes out before readers can know who teaches here. */
    static Optional<LessonRemark> imprint(Imprint imprint) {
        return imprint.isComplete()
                ? Optional.empty()
                : Optional.of(blocks("imprint", Message.of("publishing.problem.imprint")));
    }

    private static LessonRemark blocks(String field, Message message) {
        return new LessonRemark(Weight.BLOCKS, field, message, message.args().toString());
    }
}
