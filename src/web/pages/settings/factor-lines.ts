import type { setComparison } from "../../../../shared/api/baselines.ts";
import type { InputOf } from "../../../../shared/endpoint.ts";

type Factors = InputOf<typeof setComparison>["factors"];
interface Ward {
  readonly wardId: number;
  readonly code: string;
}

/** What a model is told of wards, as lines: `3E, beds, 24`, and without a ward for every one of them. */
export function factorLines(factors: Factors, wards: readonly Ward[]): string {
  return factors
    .map(({ wardId, factor, value }) => {
      const code = wardId === null ? "" : (wards.find((ward) => ward.wardId === wardId)?.code ?? String(wardId));
      return [code, factor, String(value)].join(", ");
    })
    .join("\n");
}

/**
 * The factors that lines say. A ward that is not known goes as a number that no ward has, and a line that lacks a part
 * with an empty one: the server says what is wrong with it.
 */
export function factorsOf(lines: string, wards: readonly Ward[]): Factors {
  return lines
    .split("\n")
    .filter((line) => line.trim() !== "")
    .map((line) => {
      const [code = "", factor = "", ...rest] = line.split(",").map((part) => part.trim());
      const value = rest.join(", ");
      const number = value === "" ? Number.NaN : Number(value);
      const wardId = code === "" ? null : (wards.find((ward) => ward.code === code)?.wardId ?? unknownWardId);
      return { wardId, factor, value: Number.isFinite(number) ? number : value };
    });
}

const unknownWardId = 2_147_483_647;
