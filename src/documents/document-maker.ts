import type { DocumentType, ReportDocument } from "../../shared/report-document.ts";
import { findBrowser } from "./find-browser.ts";

/** Makes files of documents. */
export interface DocumentMaker {
  /** The bytes of a document; one that a browser prints waits for those before it. */
  make(document: ReportDocument, type: Exclude<DocumentType, "text/csv">): Promise<Uint8Array>;
}

// What makes a file is loaded with the first one: it takes longer than all else that the service starts with.
const browserPdf = async () => (await import("./browser-pdf.ts")).browserPdf;
const plainPdf = async () => (await import("./plain-pdf.ts")).plainPdf;
const documentXlsx = async () => (await import("./document-xlsx.ts")).documentXlsx;

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
    make: async (given, type) => {
      const document = { ...given, cover: [...given.cover, { label: "Made by", text: `Dwell Ledger ${version}` }] };
      if (type !== "application/pdf") return (await documentXlsx())(document);
      const browser = findBrowser(browserPath);
      if (browser === null) return (await plainPdf())(document);
      // A browser takes much memory: two at once would take it from the service.
      const made = before.then(async () => (await browserPdf())(document, browser));
      before = made.catch(() => null);
      return made;
    },
  };
}
