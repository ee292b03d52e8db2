import type { Month } from "../../shared/day.ts";
import type { Role } from "../../shared/vocabulary.ts";
import type { Instant } from "../domain/days/day-number.ts";
import type { Recording } from "./patients.ts";
import type { Read, Tx } from "./store.ts";

/** One signature under a month: 1 is the signing, each higher number an amendment. */
export interface SignatureRow {
  readonly month: Month;
  readonly number: number;
  readonly digest: string;
  /** Stands for the figures that the person saw. */
  readonly seen: string;
  readonly signedAt: Instant;
  readonly signedBy: number;
  readonly role: Role;
  readonly reason: string | null;
}

const columns = {
  ...{ month: true, number: true, digest: true, seen: true, signedAt: true, signedBy: true, role: true, reason: true },
} as const;

/** The signatures of a facility by month and number; only of one month when given. */
export async function signatures(read: Read, facilityId: number, month?: Month): Promise<SignatureRow[]> {
  const rows = await read.db.signedMonth.findMany({
    where: { facilityId, ...(month === undefined ? {} : { month }) },
    select: columns,
    orderBy: [{ month: "asc" }, { number: "asc" }],
  });
  return rows.map(({ signedAt, ...row }) => ({ ...(row as typeof row & SignatureRow), signedAt: signedAt.getTime() }));
}

/** The text that was signed; null when there is no such signature. */
export async function signedText(
  read: Read,
  facilityId: number,
  { month, number }: { month: Month; number: number },
): Promise<string | null> {
  const row = await read.db.signedMonth.findUnique({
    where: { facilityId_month_number: { facilityId, month, number } },
    select: { text: true },
  });
  return row?.text ?? null;
}

/** Adds a signature with the text that was signed. */
export async function addSignature(
  tx: Tx,
  by: Recording,
  signature: Omit<SignatureRow, "signedAt" | "signedBy"> & { readonly text: string },
): Promise<void> {
  const { facilityId, personId, now } = by;
  await tx.db.signedMonth.create({
    data: { id: tx.newId(), facilityId, ...signature, signedAt: new Date(now), signedBy: personId },
  });
}

/** A document that was made of a signature. */
export interface KeptDocument {
  readonly bytes: Uint8Array;
  /** SHA-256 of the bytes in hexadecimal digits. */
  readonly digest: string;
}

interface WhichDocument {
  readonly month: Month;
  readonly number: number;
  readonly mediaType: string;
}

/** The document of a signature as it is kept; null while none was made. */
export async function keptDocument(
  read: Read,
  facilityId: number,
  { month, number, mediaType }: WhichDocument,
): Promise<KeptDocument | null> {
  return read.db.signedDocument.findFirst({
    where: { mediaType, signedMonth: { facilityId, month, number } },
    select: { bytes: true, digest: true },
  });
}

/** Keeps the document of a signature that is there and has none of this type. */
export async function keepDocument(
  tx: Tx,
  { facilityId, now }: Pick<Recording, "facilityId" | "now">,
  { month, number, mediaType, bytes, digest }: WhichDocument & KeptDocument,
): Promise<void> {
  const { id: signedMonthId } = await tx.db.signedMonth.findUniqueOrThrow({
    where: { facilityId_month_number: { facilityId, month, number } },
    select: { id: true },
  });
  const data = { signedMonthId, mediaType, bytes: new Uint8Array(bytes), digest, madeAt: new Date(now) };
  await tx.db.signedDocument.create({ data });
}
