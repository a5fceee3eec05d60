package groundbass.publishing.preflight;

import groundbass.document.PictureId;
import groundbass.lesson.LessonText;
import groundbass.lesson.NotePictures;
import groundbass.lesson.NotePieces;
import groundbass.publishing.preflight.LessonRemark.Weight;
import groundbass.text.Message;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;

/** What is to be said of what the notes show. */
final class NoteRemarks {
    private static final String NOTES = "notes";

    private NoteRemarks() {}

    /** What the notes ask for and no reader would see: pieces that the line does not have, pictures that are not there. */
    static List<LessonRemark> broken(LessonText text, Set<PictureId> missing) {
        return Stream.concat(pieces(text).stream(), ownPictures(text.document().notes(), missing))
                .toList();
    }

    /** A picture needs words as well: nobody else can say to who hears the page what is on it. */
    private static Stream<LessonRemark> ownPictures(String notes, Set<PictureId> missing) {
        return NotePictures.of(notes).stream()
                .flatMap(asked -> {
                    if (asked.id().filter(id -> !missing.contains(id)).isEmpty()) {
                        return Stream.of(Message.of("publishing.problem.photo", asked.line(), asked.address()));
                    }
                    return asked.words().isBlank()
                            ? Stream.of(Message.of("publishing.problem.photo.words", asked.line(), asked.address()))
                            : Stream.empty();
                })
                .map(message -> LessonRemark.blocks(Checkpoint.NOTES, NOTES, message));
    }

    /** Pieces that the line does not have. */
    private static List<LessonRemark> pieces(LessonText text) {
        if (!isRead(text)) {
            return List.of();
        }
        var line = text.main().line();
        int last = line.firstNumber() + line.bars().size() - 1;
        return NotePieces.broken(text.document().notes(), line).stream()
                .map(piece ->
                        Message.of("publishing.problem.piece", piece.line(), piece.address(), line.firstNumber(), last))
                .map(message -> LessonRemark.blocks(Checkpoint.NOTES, NOTES, message))
                .toList();
    }

    /** Pieces without words: who hears the page is told their bars, and not why they are there. */
    static List<LessonRemark> pictures(LessonText text) {
        if (!isRead(text)) {
            return List.of();
        }
        return NotePieces.wordless(text.document().notes(), text.main().line()).stream()
                .map(piece -> Message.of("publishing.remark.picture", piece.line(), piece.address()))
                .map(message -> new LessonRemark(
                        Checkpoint.PICTURES, Weight.MENTIONS, NOTES, message, LessonRemark.text(message)))
                .toList();
    }

    /** Which bars there are is clear once the line can be read. */
    private static boolean isRead(LessonText text) {
        return !text.main().hasErrors() && !text.document().mainLine().isBlank();
    }

    static int pieceCount(String notes) {
        return NotePieces.count(notes) + NotePictures.of(notes).size();
    }
}
