import { expect } from "vitest";
import { type Fault, Problem } from "../../shared/problems.ts";
import type { Store } from "../../src/store/store.ts";
import { everything } from "./read-back.ts";

/** The faults with which work is refused. Fails when it is not, or fails otherwise. */
export async function faultsOf(work: () => Promise<unknown> | unknown): Promise<readonly Fault[]> {
  try {
    await work();
  } catch (error) {
    if (error instanceof Problem) return error.faults;
    throw error;
  }
  throw new Error("this was not refused");
}

/** The first fault with which an act is refused, after looking that the act left nothing behind in the whole store. */
export async function refusalOf(store: Store, act: () => Promise<unknown>): Promise<Omit<Fault, "detail">> {
  const before = await everything(store);
  const [first] = await faultsOf(act);
  expect(await everything(store)).toEqual(before);
  if (!first) throw new Error("a refusal without a fault");
  const { detail, ...fault } = first;
  expect(detail).toMatch(/^[A-Z].*\.$/);
  return fault;
}
