package groundbass.engraving.svg;

import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.mark.TextFont;
import java.util.Base64;
import java.util.EnumMap;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * The characters that a drawing shows, face by face, and their fonts inside the drawing: for a file that stands alone,
 * which no site serves fonts to. A page with a strict content security policy has no use for it.
 */
final class SvgFonts {
    private final Map<Face, SortedSet<Integer>> shown = new EnumMap<>(Face.class);

    void show(Shape.Run run) {
        var characters = shown.computeIfAbsent(run.face(), face -> new TreeSet<>());
        run.text().codePoints().forEach(characters::add);
    }

    /** A style sheet with the faces that were shown. */
    String style() {
        var out = new StringBuilder("<style>");
        shown.forEach((face, characters) -> out.append("@font-face{font-family:\"Alegreya Sans\";")
                .append(descriptors(face))
                .append("src:url(data:font/ttf;base64,")
                .append(Base64.getEncoder().encodeToString(TextFont.of(face).subset(characters)))
                .append(")}"));
        return out.append("</style>").toString();
    }

    private static String descriptors(Face face) {
        return switch (face) {
            case REGULAR -> "font-weight:400;";
            case MEDIUM -> "font-weight:500;";
            case BOLD -> "font-weight:700;";
            case ITALIC -> "font-style:italic;";
        };
    }
}
