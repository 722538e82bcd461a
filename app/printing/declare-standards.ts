// Says in the file which standards it keeps: PDF/UA-1 (accessible) and PDF/A-2a (for keeping), and what its colours mean. Draws nothing.
// The library can declare either of the two, not both; and with either it writes a list of characters for each typeface that leaves out
// the parts of accented letters, which both standards forbid. So both are declared here, and no list is written.
import { srgbProfile } from './srgb-profile.ts';

type Metadata = { readonly appendXML: (xml: string) => void };

/** PDF/A takes properties it does not know only with a description of them; those of PDF/UA are among these (ISO 19005-2, 6.6.2.3). */
const standards = `
        <rdf:Description xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/" rdf:about="">
            <pdfuaid:part>1</pdfuaid:part>
        </rdf:Description>
        <rdf:Description xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/" rdf:about="">
            <pdfaid:part>2</pdfaid:part>
            <pdfaid:conformance>A</pdfaid:conformance>
        </rdf:Description>
        <rdf:Description xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/" xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#" xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#" rdf:about="">
            <pdfaExtension:schemas>
                <rdf:Bag>
                    <rdf:li rdf:parseType="Resource">
                        <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
                        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                        <pdfaSchema:property>
                            <rdf:Seq>
                                <rdf:li rdf:parseType="Resource">
                                    <pdfaProperty:name>part</pdfaProperty:name>
                                    <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                                    <pdfaProperty:category>internal</pdfaProperty:category>
                                    <pdfaProperty:description>Part of ISO 14289 that the file keeps</pdfaProperty:description>
                                </rdf:li>
                            </rdf:Seq>
                        </pdfaSchema:property>
                    </rdf:li>
                </rdf:Bag>
            </pdfaExtension:schemas>
        </rdf:Description>
        `;

/** To be called once, before the document's end. */
export function declareStandards(doc: PDFKit.PDFDocument): void {
  // The library's types know neither of the two members.
  const { _root: root } = doc as unknown as { readonly _root: { readonly data: Record<string, unknown> } };
  (doc as unknown as Metadata).appendXML(standards);
  const profile = doc.ref({ N: 3 });
  profile.end(srgbProfile);
  const intent = doc.ref({
    Type: 'OutputIntent',
    S: 'GTS_PDFA1',
    // The library writes String objects as texts and plain ones as names.
    Info: new String('sRGB IEC61966-2.1'),
    OutputConditionIdentifier: new String('sRGB IEC61966-2.1'),
    DestOutputProfile: profile,
  });
  intent.end(undefined);
  root.data.OutputIntents = [intent];
}
