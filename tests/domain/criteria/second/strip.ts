import type { Story } from "../../../../src/domain/criteria/story.ts";

const lastDay = 40;

/** A story as a strip of days: one column a day, one line a thing; what a column cannot hold stands behind. */
export function strip(story: Story): string {
  const line = (label: string, marks: (day: number) => string, rest = "") => {
    const columns = Array.from({ length: lastDay + 1 }, (_, day) => marks(day).slice(0, 1) || "·").join("");
    return `${label.padEnd(22)}${columns} ${rest}`.trimEnd();
  };
  const starts = new Set(story.newStayAt ?? []);
  const known = story.knownThrough ?? 60;
  return [
    line("day", (day) => (day % 10 === 0 ? String(day / 10) : " ")),
    ...(story.wards ?? []).map(([ward, from, to, setting], i) =>
      line(
        `${starts.has(i) ? "new stay, " : ""}ward ${ward}`,
        (day) => (day >= from && day <= (to ?? known) ? "w" : ""),
        String(setting),
      ),
    ),
    ...(story.catheters ?? []).map(([from, to, kind]) =>
      line("catheter", (day) => (day >= (from ?? 0) && day <= (to ?? known) ? "c" : ""), `${kind}, ${from} to ${to}`),
    ),
    ...(story.urine ?? []).map((one, i) =>
      line(`urine ${i + 1}`, (day) => (day === one.day ? "U" : ""), grownText(one)),
    ),
    ...(story.blood ?? []).map((one, i) =>
      line(`blood ${101 + i}`, (day) => (day === one.day ? "B" : ""), grownText(one)),
    ),
    ...(story.findings ?? []).map(([at, finding], i) =>
      line(`finding ${i + 1}`, (day) => (day === at ? "F" : ""), finding),
    ),
    ...(story.signs ?? []).map((one) =>
      line(
        one.sign,
        (day) => (day >= one.day && day <= (one.through ?? one.day) ? "s" : ""),
        `${one.finding ?? "present"}${one.read === undefined ? "" : `, read ${one.read}`}${one.otherCause ? ", other cause" : ""}${one.hour === undefined ? "" : `, ${one.hour} h`}`,
      ),
    ),
    `age ${story.ageYears}, looked for ${story.lookedFor}, known through ${known}, died ${story.died}, donor ${story.donorSupportFrom}, latest removal ${story.latestRemoval} between ${story.removedBetween}, inserted without hour ${story.insertedWithoutHour}, discharged ${story.discharged}`,
  ].join("\n");
}

function grownText({ grew = [], status, method }: NonNullable<Story["urine"]>[number]): string {
  const names = grew.map(([name, count]) => `${name} ${count}`).join(" + ") || "nothing";
  return `${names}, ${status}, ${method}`;
}
