package groundbass.engraving.pdf;

import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.action.PDActionURI;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationLink;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDBorderStyleDictionary;

/** A place on a page that leads to an address. */
final class PdfLink {
    private PdfLink() {}

    /** @param words what is said of it instead of the address (ISO 14289-1, 7.18.5) */
    static PDAnnotationLink to(String address, String words, PDRectangle place) {
        var action = new PDActionURI();
        action.setURI(address);
        var border = new PDBorderStyleDictionary();
        border.setWidth(0);
        var link = new PDAnnotationLink();
        link.setRectangle(place);
        link.setContents(words);
        link.setPrinted(true);
        link.setAction(action);
        link.setBorderStyle(border);
        return link;
    }
}
