import { z } from "zod";
import { words } from "./vocabulary.ts";

/**
 * Where an import stands, in words. `received`: files were put down and are not read yet. `staging`: lines arrive;
 * nothing counts. `checking`: each is tried. `checked`: a person is to decide. `applying`: decided; a broken-off one is
 * finished at the next start. The others are ends.
 */
export const importStates = {
  received: "Waits to be read",
  staging: "Being read",
  checking: "Being checked",
  checked: "Waits for a decision",
  applying: "Being stored",
  applied: "Stored",
  refused: "Refused, nothing stored",
  "dry-run": "Tried out, nothing stored",
  discarded: "Discarded, nothing stored",
} as const;
export const importState = z.enum(words(importStates));
export type ImportState = z.infer<typeof importState>;

/** The states in which the service works on an import. */
export const statesAtWork = ["received", "staging", "checking", "applying"] as const satisfies readonly ImportState[];

/** Whether the service works on an import. */
export function isAtWork({ state }: { readonly state: ImportState }): boolean {
  return (statesAtWork as readonly ImportState[]).includes(state);
}

/** Which lines of an import are asked for. */
export const lineKinds = ["refused", "marked", "repaired", "dropped"] as const;
export type LineKind = (typeof lineKinds)[number];

/** What one request with files may hold at most. Larger ones are imported at the machine of the service. */
export const importMost = { bytes: 8 * 1024 * 1024, lines: 50_000, files: 20 } as const;
