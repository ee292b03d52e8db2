import type { WardQuestion } from "../domain/intake/ward-codes.ts";
import type { WardAnswer } from "../usecases/imports/intake-item.ts";
import { UsageError } from "./command.ts";

/**
 * What `--ward "3 E=3E"` and `--new-ward 5S` answer about codes of wards.
 * Throws a {@link UsageError} for an answer without both codes.
 */
export function wardAnswers(values: { readonly ward: string[]; readonly "new-ward": string[] }): WardAnswer[] {
  const same = values.ward.map((text) => {
    const at = text.lastIndexOf("=");
    const [code, sameAs] = [text.slice(0, Math.max(0, at)).trim(), text.slice(at + 1).trim()];
    if (code === "" || sameAs === "") throw new UsageError('--ward takes two codes, as in --ward "3 E=3E".');
    return { code, sameAs };
  });
  return [...same, ...values["new-ward"].map((code) => ({ code: code.trim(), sameAs: null }))];
}

/** A question in a line, with the options that answer it. */
export function questionText({ code, near }: WardQuestion): string {
  const first = near[0]?.code ?? code;
  const names = near.map((ward) => (ward.code === ward.name ? ward.code : `${ward.code} (${ward.name})`)).join(", ");
  return `Unit ${code} is not known: a new unit, or the same as ${names}? Add --ward "${code}=${first}" or --new-ward "${code}".\n`;
}
