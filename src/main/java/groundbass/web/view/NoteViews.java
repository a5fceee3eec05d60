package groundbass.web.view;

import groundbass.lesson.NotePieces;
import groundbass.lesson.PageContent.PieceContent;
import java.util.List;
import java.util.Optional;

/** Notes with the pieces of the sheet that they show. */
public final class NoteViews {
    private NoteViews() {}

    /**
     * HTML that is safe to show. A piece that the line does not have is named in words.
     *
     * @param top the level that the highest heading gets
     */
    public static String html(String notes, int top, List<PieceContent> pieces) {
        return Markdown.html(
                notes, top, address -> NotePieces.isRange(address) ? drawn(address, pieces) : Optional.empty());
    }

    private static Optional<String> drawn(String address, List<PieceContent> pieces) {
        return Optional.of(pieces.stream()
                .filter(piece -> piece.range().equals(address))
                .map(PieceContent::svg)
                .findFirst()
                .orElse(""));
    }
}
