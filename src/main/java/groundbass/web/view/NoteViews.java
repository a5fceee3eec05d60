package groundbass.web.view;

import groundbass.lesson.NotePictures;
import groundbass.lesson.NotePieces;
import groundbass.lesson.PageContent.PieceContent;
import groundbass.web.view.Markdown.Figure;
import java.util.List;
import java.util.Optional;

/** Notes with the pieces of the sheet and the pictures that they show. */
public final class NoteViews {
    private NoteViews() {}

    /**
     * A picture of the educator's own that is there.
     *
     * @param address as the notes name it
     * @param path where a browser fetches it
     * @param width, height in pixels
     */
    public record PhotoView(String address, String path, int width, int height) {}

    /**
     * HTML that is safe to show. A piece that the line does not have is named in words, and so is a picture that is not
     * there.
     *
     * @param top the level that the highest heading gets
     */
    public static String html(String notes, int top, List<PieceContent> pieces, List<PhotoView> photos) {
        return Markdown.html(notes, top, (address, words, title) -> {
            if (NotePictures.isMeant(address)) {
                return Optional.of(new Figure(photo(address, words, photos), title));
            }
            return NotePieces.isRange(address)
                    ? Optional.of(new Figure(drawn(address, pieces), words))
                    : Optional.empty();
        });
    }

    private static String drawn(String address, List<PieceContent> pieces) {
        return pieces.stream()
                .filter(piece -> piece.range().equals(address))
                .map(PieceContent::svg)
                .findFirst()
                .orElse("");
    }

    private static String photo(String address, String words, List<PhotoView> photos) {
        return photos.stream()
                .filter(photo -> photo.address().equals(address))
                .map(photo ->
                        "<img class=\"notes-photo\" src=\"%s\" alt=\"%s\" width=\"%d\" height=\"%d\" loading=\"lazy\" decoding=\"async\">"
                                .formatted(escaped(photo.path()), escaped(words), photo.width(), photo.height()))
                .findFirst()
                .orElse("");
    }

    /** WHATWG HTML, section "Attributes": what ends a value in double quotes, or begins a reference. */
    private static String escaped(String value) {
        return value.replace("&", "&amp;")
                .replace("\"", "&quot;")
                .replace("<", "&lt;")
                .replace(">", "&gt;");
    }
}
