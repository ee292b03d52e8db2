import { type Fault, Problem } from "../../../shared/problems.ts";
import type { Baseline, BaselineOrigin, ModelBaseline, PooledBaseline } from "./baseline.ts";
import { termFaults } from "./term-faults.ts";

/** Everything that is wrong with a baseline, each with a JSON pointer into it; empty when it can be used. */
export function baselineFaults(baseline: Baseline): Fault[] {
  const faults = baseline.kind === "pooled" ? pooledFaults(baseline) : modelFaults(baseline);
  return [...originFaults(baseline.origin), ...faults];
}

/** Throws a Problem with every fault of a baseline at once. */
export function refuseFaultyBaseline(baseline: Baseline): void {
  const [first, ...more] = baselineFaults(baseline);
  if (first) throw new Problem(first, ...more);
}

function originFaults(origin: BaselineOrigin): Fault[] {
  return Object.entries(origin).flatMap(([key, text]) =>
    text.trim() === "" ? [fault(`/origin/${key}`, `The baseline does not say its ${key}.`)] : [],
  );
}

function pooledFaults({ rates }: PooledBaseline): Fault[] {
  if (rates.length === 0) return [fault("/rates", "The baseline has no rates.")];
  const seen = new Set<string>();
  return rates.flatMap(({ key, infectionsPerCatheterDay: rate, utilization }, at) => {
    const pointer = `/rates/${at}`;
    const found: Fault[] = [];
    if (key.trim() === "") found.push(fault(`${pointer}/key`, "A rate does not say for which wards it is."));
    if (seen.has(key)) found.push(fault(`${pointer}/key`, `${key} stands in the baseline more than once.`));
    seen.add(key);
    if (rate === null && utilization === null)
      found.push(fault(pointer, `${key} has neither a rate nor a utilization.`));
    if (rate !== null && !(rate >= 0 && rate <= 1)) {
      found.push(
        fault(`${pointer}/infectionsPerCatheterDay`, `${key} has a rate of ${rate} infections a catheter-day.`),
      );
    }
    if (utilization !== null && !(utilization >= 0 && utilization <= 1)) {
      found.push(
        fault(`${pointer}/utilization`, `${key} has a utilization of ${utilization}, which is not from 0 to 1.`),
      );
    }
    return found;
  });
}

function modelFaults({ intercept, terms }: ModelBaseline): Fault[] {
  const faults = Number.isFinite(intercept) ? [] : [fault("/intercept", "The model has no intercept.")];
  const seen = new Set<string>();
  for (const [at, term] of terms.entries()) {
    const pointer = `/terms/${at}`;
    if (seen.has(term.factor)) faults.push(fault(`${pointer}/factor`, `${term.factor} is a term more than once.`));
    seen.add(term.factor);
    faults.push(...termFaults(term).map((found) => fault(`${pointer}${found.pointer}`, found.detail)));
  }
  return faults;
}

function fault(pointer: string, detail: string): Fault {
  return { code: "baseline-unusable", pointer, detail };
}
