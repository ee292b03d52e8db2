import type { ChartInput } from "../../../shared/chart-input.ts";

/** What stands in the place of a chart that cannot be drawn, with the reason. */
export function absentChart({ id, title }: { id: string; title: string }, reason: string): ChartInput {
  return { kind: "absent", input: { id, title, sentence: reason }, notes: [] };
}
