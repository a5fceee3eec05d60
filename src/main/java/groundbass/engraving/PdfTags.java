package groundbass.engraving;

import groundbass.score.Passage;
import java.io.IOException;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDObjectReference;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.PDLayoutAttributeObject;
import org.apache.pdfbox.pdmodel.documentinterchange.taggedpdf.StandardStructureTypes;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;

/** The tree that a screen reader walks (ISO 14289-1): every group is tagged, or marked as furniture. */
final class PdfTags {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final PDStructureElement document;
    private final Map<PDPage, COSArray> contents = new HashMap<>();
    private final TreeMap<Integer, PDParentTreeValue> parents = new TreeMap<>();
    private final Deque<Boolean> open = new ArrayDeque<>();
    private PDStructureElement current;
    private Function<Passage, String> wordsOf = passage -> "";

    PdfTags(PDDocument pdf) {
        pdf.getDocumentCatalog().setStructureTreeRoot(root);
        document = new PDStructureElement(StandardStructureTypes.DOCUMENT, root);
        root.appendKid(document);
        current = document;
    }

    /** What the systems that follow are in words. */
    void tell(Function<Passage, String> words) {
        wordsOf = words;
    }

    void begin(PDPageContentStream out, PDPage page, Group group, Box points) throws IOException {
        open.push(group.role() != Group.Role.EVENT);
        switch (group.role()) {
            case EVENT -> {}
            case FURNITURE -> out.beginMarkedContent(COSName.ARTIFACT);
            case TITLE -> begin(out, page, StandardStructureTypes.H1);
            case PARAGRAPH -> begin(out, page, StandardStructureTypes.P);
            case LINK -> begin(out, page, StandardStructureTypes.LINK);
            case SYSTEM -> {
                var figure = begin(out, page, StandardStructureTypes.Figure);
                group.passage().map(wordsOf).ifPresent(figure::setAlternateDescription);
                figure.addAttribute(placed(points));
            }
        }
    }

    void end(PDPageContentStream out) throws IOException {
        if (open.pop()) {
            out.endMarkedContent();
        }
    }

    void link(PDPage page, Box points, String address, String words) throws IOException {
        var annotation = new PDAnnotationLink();
        annotation.setRectangle(rectangle(points));
        annotation.setContents(words);
        annotation.setPrinted(true);
        var action = new PDActionURI();
        action.setURI(address);
        annotation.setAction(action);
        var border = new PDBorderStyleDictionary();
        border.setWidth(0);
        annotation.setBorderStyle(border);
        annotation.setPage(page);
        page.getAnnotations().add(annotation);
        var element = StandardStructureTypes.LINK.equals(current.getStructureType())
                ? current
                : child(page, StandardStructureTypes.LINK);
        annotation.setStructParent(parents.size());
        parents.put(parents.size(), new PDParentTreeValue(element.getCOSObject()));
        var reference = new PDObjectReference();
        reference.setReferencedObject(annotation);
        reference.getCOSObject().setItem(COSName.PG, page);
        element.appendKid(reference);
    }

    void finish() {
        var tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
    }

    private PDStructureElement begin(PDPageContentStream out, PDPage page, String type) throws IOException {
        var elements = contents.computeIfAbsent(page, this::register);
        int id = elements.size();
        current = child(page, type);
        current.appendKid(id);
        elements.add(current.getCOSObject());
        out.beginMarkedContent(COSName.getPDFName(type), id);
        return current;
    }

    private COSArray register(PDPage page) {
        var elements = new COSArray();
        page.setStructParents(parents.size());
        page.getCOSObject().setName(COSName.getPDFName("Tabs"), "S");
        parents.put(parents.size(), new PDParentTreeValue(elements));
        return elements;
    }

    private PDStructureElement child(PDPage page, String type) {
        var element = new PDStructureElement(type, document);
        element.setPage(page);
        document.appendKid(element);
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
