import type { DocumentType, ReportDocument } from "../../shared/report-document.ts";
import { browserPdf, findBrowser } from "./browser-pdf.ts";
import { documentXlsx } from "./document-xlsx.ts";
import { plainPdf } from "./plain-pdf.ts";

/** Makes files of documents. */
export interface DocumentMaker {
  /** The bytes of a document; one that a browser prints waits for those before it. */
  make(document: ReportDocument, type: Exclude<DocumentType, "text/csv">): Promise<Uint8Array>;
}

/**
 * A maker that names the program's version on each cover, and prints by the browser at `browserPath`, by one where they
 * usually are, or, where there is none, without a browser.
 */
export function documentMaker({
  version,
  browserPath,
}: {
  version: string;
  browserPath: string | null;
}): DocumentMaker {
  let before: Promise<unknown> = Promise.resolve();
  return {
    make: (given, type) => {
      const document = { ...given, cover: [...given.cover, { label: "Made by", text: `Dwell Ledger ${version}` }] };
      if (type !== "application/pdf") return documentXlsx(document);
      const browser = findBrowser(browserPath);
      if (browser === null) return plainPdf(document);
      // A browser takes much memory: two at once would take it from the service.
      const made = before.then(() => browserPdf(document, browser));
      before = made.catch(() => null);
      return made;
    },
  };
}
