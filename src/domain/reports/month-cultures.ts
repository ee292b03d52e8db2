import type { Sheet, SheetCell, SheetColumn } from "../../../shared/sheet.ts";
import { type DayNumber, dayText } from "../days/day-number.ts";

/** The urine cultures of a ward in a month. */
export interface WardCultures {
  readonly ward: string;
  readonly name: string;
  /** Cultures that were collected, without those that the laboratory withdrew. */
  readonly cultures: number;
  /** Those of patients with an indwelling catheter on that day or the day before. */
  readonly ofCatheters: number;
  /** Those of them without a sign that was present from 3 days before to 3 days after. */
  readonly withoutSign: number;
}

const columns: SheetColumn[] = [
  { key: "ward", label: "Unit", kind: "text", unit: null },
  { key: "name", label: "Name", kind: "text", unit: null },
  { key: "cultures", label: "Urine cultures", kind: "whole", unit: "cultures" },
  { key: "of_catheters", label: "With a catheter", kind: "whole", unit: "cultures" },
  { key: "without_sign", label: "With a catheter and no recorded sign", kind: "whole", unit: "cultures" },
  { key: "share", label: "Share without a recorded sign", kind: "ratio", unit: "of cultures with a catheter" },
];

/** A month's urine cultures by ward. Common practice: cultures without a reason find bacteria that need no treatment. */
export function monthCulturesSheet(
  wards: readonly WardCultures[],
  about: { readonly facility: string; readonly first: DayNumber; readonly last: DayNumber; readonly asOf: number },
): Sheet {
  const sum = (key: "cultures" | "ofCatheters" | "withoutSign") => wards.reduce((all, one) => all + one[key], 0);
  const all = { ward: "All units", name: "", cultures: sum("cultures"), ofCatheters: sum("ofCatheters") };
  return {
    id: "month-cultures",
    title: `Urine cultures of catheters, ${about.facility}`,
    period: `${dayText(about.first)} to ${dayText(about.last)}`,
    asOf: new Date(about.asOf).toISOString(),
    sources: ["Share of cultures that were taken without a recorded sign: common practice of diagnostic stewardship"],
    columns,
    rows: wards.map(rowOf),
    total: rowOf({ ...all, withoutSign: sum("withoutSign") }),
    cautions: [
      "By the unit at collection. A sign counts when it was recorded as present from 3 days before to 3 days after; an unrecorded sign may have been present.",
    ],
  };
}

function rowOf({ ward, name, cultures, ofCatheters, withoutSign }: WardCultures): SheetCell[] {
  return [ward, name, cultures, ofCatheters, withoutSign, ofCatheters === 0 ? null : withoutSign / ofCatheters];
}
