import type { readMonthDocument as endpoint } from "../../../shared/api/month-document.ts";
import type { InputOf, OutputOf } from "../../../shared/endpoint.ts";
import { roles } from "../../../shared/vocabulary.ts";
import { monthDocument } from "../../domain/reports/month-document.ts";
import { monthFiguresSheet } from "../../domain/reports/month-figures-sheet.ts";
import { everybody } from "../../store/people.ts";
import type { Act } from "../act.ts";
import type { Reach } from "../reach.ts";
import { changedAfterSigning } from "./changed-after-signing.ts";
import { readMonthFigures } from "./read-month-figures.ts";
import { readSignedMonth } from "./read-signatures.ts";

/**
 * A month's figures within reach as a document, with what changed since it was signed; with a `signature` made of the text that was signed and of nothing that
 * was recorded since. Refuses `in-the-future`, and `not-found` for a signature that is not there.
 */
export async function readMonthDocument(
  act: Act,
  { month, signature: number, ...reach }: InputOf<typeof endpoint> & Reach,
): Promise<OutputOf<typeof endpoint>> {
  if (number === undefined) {
    const { report } = await readMonthFigures(act, { month, ...reach });
    const changed = await changedAfterSigning(act, { month, ...reach });
    const document = monthDocument(report, null, { more: [monthFiguresSheet(report, changed)], changed });
    return { document, signed: null };
  }
  const { report, signature } = await readSignedMonth(act, { month, number, ...reach });
  const people = await act.store.read((read) => everybody(read, act.actor.facilityId));
  const name = people.find(({ personId }) => personId === signature.signedBy)?.name ?? `person ${signature.signedBy}`;
  const role = roles[signature.role].replace(/ \(.*\)$/, "");
  const amended = number === 1 ? "" : ` as amendment ${number - 1} (${signature.reason ?? "no reason given"})`;
  const at = new Date(signature.signedAt).toISOString();
  const signed = `${at} (UTC) by ${name}, ${role}${amended}. SHA-256 of the signed text: ${signature.digest}`;
  const document = monthDocument(report, signed, { more: [monthFiguresSheet(report)] });
  // What somebody sees of some wards only is made for them anew.
  return { document, signed: reach.wardIds ? null : { month, number } };
}
