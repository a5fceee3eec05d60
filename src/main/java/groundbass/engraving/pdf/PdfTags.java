package groundbass.engraving.pdf;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Group;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDLayoutAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;

/**
 * The tree that a screen reader walks (ISO 14289-1): every group is tagged, or marked as furniture. Each piece is a
 * section with headings one level below those of the first, which bears the document's title.
 */
final class PdfTags {
    private final PDStructureElement document;
    private final PdfParents parents;
    private final Map<PDPage, COSArray> contents = new HashMap<>();
    private final Deque<Boolean> open = new ArrayDeque<>();
    private PDPage page;
    private PDStructureElement section;
    private Optional<PDStructureElement> list = Optional.empty();
    private PDStructureElement current;
    private int lastLevel;
    private int piece;
    private final Function<Group, Optional<String>> wordsOf;

    /** @param words what a group's music is in words */
    PdfTags(PDDocument pdf, Function<Group, Optional<String>> words) {
        parents = new PdfParents(pdf);
        document = parents.element(StandardStructureTypes.DOCUMENT);
        wordsOf = words;
        section();
        current = document;
    }

    private void section() {
        section = new PDStructureElement(StandardStructureTypes.SECT, document);
        document.appendKid(section);
        list = Optional.empty();
    }

    /** What follows stands on this page. */
    void page(PDPage next) {
        page = next;
    }

    void begin(PdfContent out, Group group, Box points) {
        if (group.piece() > piece || group.role() == Group.Role.HEADING) {
            piece = Math.max(piece, group.piece());
            section();
        }
        open.push(group.role() != Group.Role.EVENT && group.role() != Group.Role.ANNOTATION);
        switch (group.role()) {
            case EVENT, ANNOTATION -> {}
            case FURNITURE -> out.beginArtifact();
            case TITLE -> heading(out, lastLevel == 0 ? 1 : 2);
            case HEADING -> heading(out, 2);
            case SUBHEADING -> heading(out, 3);
            case PARAGRAPH -> block(out, StandardStructureTypes.P);
            case LINK -> content(out, child(section, StandardStructureTypes.LINK));
            case ITEM -> item(out);
            case SYSTEM -> {
                var figure = block(out, StandardStructureTypes.Figure);
                wordsOf.apply(group).ifPresent(figure::setAlternateDescription);
                figure.addAttribute(placed(points));
            }
        }
    }

    void end(PdfContent out) {
        if (open.pop()) {
            out.endMarked();
        }
    }

    void link(Box points, String address, String words) {
        var annotation = PdfLink.to(address, words, rectangle(points));
        annotation.setPage(page);
        parents.adopt(page, annotation);
        var element = StandardStructureTypes.LINK.equals(current.getStructureType())
                ? current
                : child(section, StandardStructureTypes.LINK);
        annotation.setStructParent(parents.add(new PDParentTreeValue(element.getCOSObject())));
        var reference = new PDObjectReference();
        reference.setReferencedObject(annotation);
        reference.getCOSObject().setItem(COSName.PG, page);
        element.appendKid(reference);
    }

    void finish() {
        parents.finish();
    }

    /** No level is left out on the way down (ISO 14289-1, 7.4.2). */
    private void heading(PdfContent out, int level) {
        lastLevel = Math.min(level, lastLevel + 1);
        block(out, "H" + lastLevel);
    }

    private PDStructureElement block(PdfContent out, String type) {
        list = Optional.empty();
        return content(out, child(section, type));
    }

    /** Items that follow one another are one list, also where a page ends between them. */
    private void item(PdfContent out) {
        var all = list.orElseGet(() -> child(section, StandardStructureTypes.L));
        list = Optional.of(all);
        content(out, child(child(all, StandardStructureTypes.LI), StandardStructureTypes.L_BODY));
    }

    private PDStructureElement content(PdfContent out, PDStructureElement element) {
        var elements = contents.computeIfAbsent(page, this::register);
        int id = elements.size();
        current = element;
        element.setPage(page);
        element.appendKid(id);
        elements.add(element.getCOSObject());
        out.beginTagged(element.getStructureType(), id);
        return element;
    }

    private COSArray register(PDPage page) {
        var elements = new COSArray();
        page.setStructParents(parents.add(new PDParentTreeValue(elements)));
        page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        return elements;
    }

    private static PDStructureElement child(PDStructureElement parent, String type) {
        var element = new PDStructureElement(type, parent);
        parent.appendKid(element);
        return element;
    }

    private static PDLayoutAttributeObject placed(Box points) {
        var layout = new PDLayoutAttributeObject();
        layout.setBBox(rectangle(points));
        layout.setPlacement(PDLayoutAttributeObject.PLACEMENT_BLOCK);
        return layout;
    }

    private static PDRectangle rectangle(Box points) {
        return new PDRectangle(
                (float) points.left(), (float) points.top(), (float) points.width(), (float) Math.abs(points.height()));
    }
}
