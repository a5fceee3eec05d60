package groundbass.engraving.pdf;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Page;
import groundbass.engraving.mark.Shape;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.destination.PDPageXYZDestination;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDDocumentOutline;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineNode;

/** The outline beside a document: each line of music, in it its sections, and the chapters of words. */
final class PdfBookmarks {
    private final PDDocumentOutline outline = new PDDocumentOutline();
    private PDOutlineNode line = outline;

    void add(PDPage page, Page layout, Page.Part part) {
        double y = part.group().box().top();
        switch (part.group().role()) {
            case TITLE -> line = item(outline, text(part), page, layout, y);
            case HEADING -> item(outline, text(part), page, layout, y);
            case SYSTEM ->
                part.marks().stream()
                        .filter(mark -> mark.kind() == Kind.SECTION)
                        .flatMap(mark -> text(mark).stream())
                        .forEach(name -> item(line, name, page, layout, y));
            case SUBHEADING, PARAGRAPH, ITEM, LINK, EVENT, ANNOTATION, FURNITURE -> {}
        }
    }

    void addTo(PDDocument document) {
        if (outline.hasChildren()) {
            document.getDocumentCatalog().setDocumentOutline(outline);
        }
    }

    private static PDOutlineItem item(PDOutlineNode parent, String name, PDPage page, Page layout, double y) {
        var destination = new PDPageXYZDestination();
        destination.setPage(page);
        destination.setTop((int) Math.ceil((layout.height() - y) * PdfCanvas.pointsPerSpace(layout)));
        var item = new PDOutlineItem();
        item.setTitle(name);
        item.setDestination(destination);
        parent.addLast(item);
        return item;
    }

    private static String text(Page.Part part) {
        return part.marks().stream().flatMap(mark -> text(mark).stream()).collect(Collectors.joining(" "));
    }

    private static Optional<String> text(Mark mark) {
        return mark.shape() instanceof Shape.Run run ? Optional.of(run.text()) : Optional.empty();
    }
}
