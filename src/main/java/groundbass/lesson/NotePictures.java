package groundbass.lesson;

import groundbass.document.PictureId;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Image;

/**
 * Pictures of the educator's own in notes: an image (CommonMark 0.31, section 6.4) whose address names one that was sent,
 * {@code ![The thumb behind the neck](picture:k3q8…)}. Its words stand for it where it is not seen; a title, where there
 * is one, stands under it.
 */
public final class NotePictures {
    /** How the address of a picture begins; its id follows. */
    public static final String SCHEME = "picture:";

    private NotePictures() {}

    /**
     * What the notes ask for.
     *
     * @param address as typed
     * @param words that stand for it; blank where there are none
     * @param line of the notes, from 1
     */
    public record Asked(String address, String words, int line) {
        /** Empty where the address has not the form of an id. */
        public Optional<PictureId> id() {
            return NotePictures.id(address);
        }
    }

    /** Whether an address was meant as a picture of ours. */
    public static boolean isMeant(String address) {
        return address.startsWith(SCHEME);
    }

    /** What an address names; empty for other addresses, and where it has not the form of an id. */
    public static Optional<PictureId> id(String address) {
        return isMeant(address) ? PictureId.parse(address.substring(SCHEME.length())) : Optional.empty();
    }

    public static String address(PictureId id) {
        return SCHEME + id;
    }

    /** A picture as one types it into notes. */
    public static String typed(PictureId id, String words) {
        String safe = words.strip().replaceAll("\\s+", " ").replaceAll("([\\\\\\[\\]`*_<&!~])", "\\\\$1");
        return "![" + safe + "](" + address(id) + ")";
    }

    /** In the order of the text, each as often as it stands there; none of a text that is shown as it was typed. */
    public static List<Asked> of(String notes) {
        if (!notes.contains(SCHEME) || NoteText.isTooMuch(notes)) {
            return List.of();
        }
        var asked = new ArrayList<Asked>();
        NoteText.read(notes).accept(new AbstractVisitor() {
            @Override
            public void visit(Image image) {
                if (isMeant(image.getDestination())) {
                    asked.add(new Asked(image.getDestination(), NoteText.words(image), NoteLinks.line(image)));
                }
            }
        });
        return List.copyOf(asked);
    }

    /** Each picture once, in the order of the text. */
    public static List<PictureId> ids(String notes) {
        return of(notes).stream()
                .flatMap(asked -> asked.id().stream())
                .distinct()
                .toList();
    }
}
