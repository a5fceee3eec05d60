package groundbass.engraving.pdf;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.TreeMap;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDNumberTreeNode;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDParentTreeValue;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureElement;
import org.apache.pdfbox.pdmodel.documentinterchange.logicalstructure.PDStructureTreeRoot;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotation;

/** The root of the tree of tags, and the way back from content to its tag (ISO 32000-1, 14.7.4.4). */
final class PdfParents {
    private final PDStructureTreeRoot root = new PDStructureTreeRoot();
    private final TreeMap<Integer, PDParentTreeValue> parents = new TreeMap<>();

    PdfParents(PDDocument pdf) {
        pdf.getDocumentCatalog().setStructureTreeRoot(root);
    }

    /** A tag right under the root. */
    PDStructureElement element(String type) {
        var element = new PDStructureElement(type, root);
        root.appendKid(element);
        return element;
    }

    /** @return the key by which the content finds its tag or tags */
    int add(PDParentTreeValue tags) {
        int key = parents.size();
        parents.put(key, tags);
        return key;
    }

    void adopt(PDPage page, PDAnnotation annotation) {
        try {
            page.getAnnotations().add(annotation);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    void finish() {
        var tree = new PDNumberTreeNode(PDParentTreeValue.class);
        tree.setNumbers(parents);
        root.setParentTree(tree);
        root.setParentTreeNextKey(parents.size());
    }
}
