import { isNational, nonDefaultReading } from "../../domain/baselines/is-national.ts";
import { predict } from "../../domain/baselines/predict.ts";
import type { ComparedWard } from "../../domain/comparison/comparison-facts.ts";
import type { Ratio } from "../../domain/counting/ratio.ts";
import { inForceOn } from "../../domain/counting/ward-setting.ts";
import { scopeIn } from "../../domain/cultures/family-of-wards.ts";
import { monthDays } from "../../domain/days/month.ts";
import { nonDefaultWords } from "../../domain/editions/readings.ts";
import { readOnOf } from "../../store/chosen-readings.ts";
import { scopesOfFacility } from "../../store/scopes.ts";
import { wards } from "../../store/wards.ts";
import type { Act } from "../act.ts";
import { loadComparison } from "./load-comparison.ts";
import { factorsOf } from "./read-figures.ts";

/**
 * What the baselines in use predict for a ward over its watched months, month by month and added up; null, with the
 * reason, as soon as one of them has no baseline or the baseline does not cover the ward.
 */
export function predictedInfections(act: Act, ward: ComparedWard): Promise<Ratio> {
  const { facilityId } = act.actor;
  return act.store.read(async (read): Promise<Ratio> => {
    const [row] = await wards(read, facilityId, [ward.wardId]);
    const scopes = await scopesOfFacility(read, facilityId, [ward.wardId]);
    const readOn = await readOnOf(read, facilityId);
    let sum = 0;
    for (const { month, infections, catheterDays, patientDays } of ward.months) {
      if (infections === null) continue;
      const loaded = await loadComparison(read, facilityId, month);
      const baseline = loaded.comparison.infections?.baseline;
      if (!baseline) return { value: null, reason: `No baseline is in use for ${month}, so nothing is predicted.` };
      const first = monthDays(month).first;
      const scope = scopeIn(scopes, ward.wardId, month);
      if (nonDefaultWords(scope?.edition ?? null, first, readOn).length > 0 && isNational(baseline))
        return { value: null, reason: nonDefaultReading };
      const said = row && inForceOn(row.settings, monthDays(month).last);
      const factors = factorsOf(ward.wardId, said, loaded);
      const asked = { ward: ward.code, wardType: said?.type ?? null, catheterDays, patientDays, factors };
      const { predicted } = predict(baseline, "infections", [asked]);
      if (predicted.value === null) return predicted;
      sum += predicted.value;
    }
    return { value: sum };
  });
}
