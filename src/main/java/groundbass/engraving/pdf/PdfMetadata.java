package groundbass.engraving.pdf;

import groundbass.engraving.mark.Xml;
import java.time.temporal.ChronoUnit;

/** The XMP packet: what the document is called, and that it claims PDF/A-2a (ISO 19005-2) and PDF/UA-1 (ISO 14289-1). */
final class PdfMetadata {
    private PdfMetadata() {}

    static String packet(SheetMeta meta, String producer) {
        var made = meta.made().truncatedTo(ChronoUnit.SECONDS).toString();
        return PACKET.replace("{title}", Xml.text(meta.title()))
                .replace("{author}", author(meta))
                .replace("{made}", made)
                .replace("{producer}", Xml.text(producer));
    }

    private static String author(SheetMeta meta) {
        return meta.author().isEmpty()
                ? ""
                : "<dc:creator><rdf:Seq><rdf:li>" + Xml.text(meta.author()) + "</rdf:li></rdf:Seq></dc:creator>";
    }

    private static final String PACKET = """
            <?xpacket begin="\uFEFF" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/"><rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
            <rdf:Description rdf:about="" xmlns:dc="http://purl.org/dc/elements/1.1/" \
            xmlns:xmp="http://ns.adobe.com/xap/1.0/" xmlns:pdf="http://ns.adobe.com/pdf/1.3/" \
            xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/" xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/">
            <dc:title><rdf:Alt><rdf:li xml:lang="x-default">{title}</rdf:li></rdf:Alt></dc:title>{author}\
            <dc:format>application/pdf</dc:format>
            <xmp:CreateDate>{made}</xmp:CreateDate><xmp:ModifyDate>{made}</xmp:ModifyDate>\
            <pdf:Producer>{producer}</pdf:Producer>
            <pdfaid:part>2</pdfaid:part><pdfaid:conformance>A</pdfaid:conformance><pdfuaid:part>1</pdfuaid:part>
            </rdf:Description>
            <rdf:Description rdf:about="" xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" \
            xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" \
            xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
            <pdfaExtension:schemas><rdf:Bag><rdf:li rdf:parseType="Resource">\
            <pdfaSchema:schema>PDF/UA Universal Accessibility Schema</pdfaSchema:schema>\
            <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>\
            <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
            <pdfaSchema:property><rdf:Seq><rdf:li rdf:parseType="Resource"><pdfaProperty:name>part</pdfaProperty:name>\
            <pdfaProperty:valueType>Integer</pdfaProperty:valueType>\
            <pdfaProperty:category>internal</pdfaProperty:category>\
            <pdfaProperty:description>PDF/UA part</pdfaProperty:description></rdf:li></rdf:Seq></pdfaSchema:property>\
            </rdf:li></rdf:Bag></pdfaExtension:schemas>
            </rdf:Description></rdf:RDF></x:xmpmeta>
            <?xpacket end="w"?>""";
}
