package groundbass.publishing;

import groundbass.catalog.episode.DocumentCheck;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.settings.Imprint;
import groundbass.document.Clearance;
import groundbass.document.EpisodeDocument;
import groundbass.form.FieldProblem;
import groundbass.lesson.LessonText;
import groundbass.lesson.NotePieces;
import groundbass.publishing.Remark.Weight;
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
    public List<Remark> remarks(EpisodeId episode, EpisodeDocument document) {
        return remarks(episode, LessonText.read(document));
    }

    List<Remark> remarks(EpisodeId episode, LessonText text) {
        var document = text.document();
        var remarks = new ArrayList<Remark>();
        DocumentCheck.problems(document).forEach(problem -> remarks.add(of(problem)));
        lines(text, remarks);
        groove(text, remarks);
        rights(document, remarks);
        pieces(text, remarks);
        lostWords(text, remarks);
        address(episode, remarks);
        return List.copyOf(remarks);
    }

    private static Remark of(FieldProblem problem) {
        return blocks(problem.field(), new Message(problem.key(), problem.args()));
    }

    private static void lines(LessonText text, List<Remark> remarks) {
        remarks.addAll(LineRemarks.of("mainLine", text.document().mainLine(), text.main()));
        for (int i = 0; i < text.exercises().size(); i++) {
            var source = text.document().exercises().get(i);
            remarks.addAll(LineRemarks.of(
                    "exercises[" + i + "]", source, text.exercises().get(i)));
        }
    }

    private static void groove(LessonText text, List<Remark> remarks) {
        text.groove().stream()
                .flatMap(reading -> reading.problems().stream())
                .map(problem -> Message.of(
                        "publishing.problem.groove",
                        problem.line(),
                        problem.column(),
                        problem.found(),
                        problem.expected()))
                .forEach(message -> remarks.add(blocks("groove", message)));
    }

    private static void rights(EpisodeDocument document, List<Remark> remarks) {
        if (document.rights().statement().isBlank()) {
            remarks.add(blocks("rights.statement", Message.of("publishing.problem.rights")));
        }
        clearance(document.rights().clearance()).ifPresent(remarks::add);
    }

    /** While the question is open or permission awaited, nothing goes out. */
    static Optional<Remark> clearance(Clearance clearance) {
        if (clearance.isSettled()) {
            return Optional.empty();
        }
        String key = clearance == Clearance.OPEN ? "publishing.problem.clearance.open" : "publishing.problem.clearance";
        return Optional.of(blocks("rights.clearance", Message.of(key)));
    }

    private static void pieces(LessonText text, List<Remark> remarks) {
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

    private static void lostWords(LessonText text, List<Remark> remarks) {
        if (text.main().hasErrors()) {
            return; // which words are lost is clear once the line can be read
        }
        var lesson = text.lesson();
        for (int line = 0; line <= lesson.exercises().size(); line++) {
            lesson.walkthrough(line)
                    .lost()
                    .forEach(edit -> remarks.add(new Remark(
                            Weight.ASKS,
                            "walkthrough",
                            Message.of("publishing.remark.lost", edit.bar(), edit.sentence()),
                            edit.sentence())));
        }
    }

    private void address(EpisodeId episode, List<Remark> remarks) {
        String printed = addresses.episode(episode);
        if (!addresses.isTrial() && LocalAddress.is(printed)) {
            remarks.add(new Remark(Weight.ASKS, "address", Message.of("publishing.remark.address", printed), printed));
        }
    }

    /** Nothing goes out before readers can know who teaches here. */
    static Optional<Remark> imprint(Imprint imprint) {
        return imprint.isComplete()
                ? Optional.empty()
                : Optional.of(blocks("imprint", Message.of("publishing.problem.imprint")));
    }

    private static Remark blocks(String field, Message message) {
        return new Remark(Weight.BLOCKS, field, message, message.args().toString());
    }
}
