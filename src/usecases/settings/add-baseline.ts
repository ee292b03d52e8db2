import { baselineOfRows, type StoredBaseline } from "../../domain/baselines/stored-baseline.ts";
import { writeAudit } from "../../store/audit.ts";
import { addBaseline as store } from "../../store/baselines.ts";
import { type Act, recording } from "../act.ts";

export interface AddBaseline extends Pick<StoredBaseline, "kind" | "rows"> {
  readonly origin: Omit<StoredBaseline["origin"], "id">;
}

/** Adds a baseline that can be used. Refuses `baseline-unusable` with every fault at once. */
export function addBaseline(act: Act, { kind, rows, origin }: AddBaseline): Promise<{ baselineId: number }> {
  const baseline = { kind, rows, origin: { id: "new", ...origin } };
  baselineOfRows(baseline);
  return act.store.tx(async (tx) => {
    const by = recording(act);
    const baselineId = await store(tx, by, baseline);
    await writeAudit(tx, by, { action: "add-baseline", details: { baselineId } });
    return { baselineId };
  });
}
