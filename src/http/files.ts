import type { FastifyReply, FastifyRequest } from "fastify";
import type { Endpoint } from "../../shared/endpoint.ts";
import { type DocumentType, documentTypes, type ReportDocument } from "../../shared/report-document.ts";
import { csvMediaType, type Sheet } from "../../shared/sheet.ts";
import { sheetCsv } from "../csv/sheet-csv.ts";
import type { DocumentMaker } from "../documents/document-maker.ts";
import type { Act } from "../usecases/act.ts";
import { keepSignedDocument, type SignedDocument } from "../usecases/months/keep-signed-document.ts";

/** The media types, beside JSON, in which an endpoint answers. */
export function fileTypes({ reply }: Pick<Endpoint, "reply">): readonly DocumentType[] {
  if (reply === "sheet") return [csvMediaType];
  return reply === "document" ? (Object.keys(documentTypes) as DocumentType[]) : [];
}

/** The type of the file that a request asks for; null when it asks for JSON. */
export function fileTypeAsked(endpoint: Endpoint, { headers }: FastifyRequest): DocumentType | null {
  return fileTypes(endpoint).find((one) => (headers.accept ?? "").startsWith(one)) ?? null;
}

/** By whom a file is asked for, and what makes it. */
interface FileAsked {
  readonly endpoint: Endpoint;
  readonly request: FastifyRequest;
  readonly documents: DocumentMaker;
  readonly act: Act;
}

/** The file that is asked for, as the body of the reply, which is marked as one; null for who asks for JSON. */
export async function asFile(
  reply: FastifyReply,
  { endpoint, request, documents, act }: FileAsked,
  answer: object | string,
): Promise<string | Buffer | null> {
  if (fileTypes(endpoint).length === 0) return null;
  // What is answered depends on what is asked for, so nothing between may give one for the other.
  reply.header("vary", "accept");
  const type = fileTypeAsked(endpoint, request);
  if (type === null) return null;
  if (endpoint.reply === "sheet") {
    reply.type(`${csvMediaType}; charset=utf-8`);
    return sheetCsv((answer as { sheet: Sheet }).sheet);
  }
  const { document, signed = null } = answer as {
    document: ReportDocument;
    signed?: Omit<SignedDocument, "mediaType"> | null;
  };
  const [first] = document.sheets;
  if (type === csvMediaType && first) {
    reply.type(`${csvMediaType}; charset=utf-8`);
    return sheetCsv(first);
  }
  if (type === csvMediaType) throw new Error(`${endpoint.path} answered a document without a sheet`);
  reply.type(type);
  const make = () => documents.make(document, type);
  const isKept = signed !== null && type === "application/pdf";
  return Buffer.from(isKept ? await keepSignedDocument(act, { ...signed, mediaType: type }, make) : await make());
}
