import type { AlderBay } from "../http/alder-bay.ts";
import type { fillImports } from "../http/full-imports.ts";
import type { fillRound, Placed } from "../http/full-round.ts";

/** A page as it is opened in tests and pictures: its name, its address, and a text that stands there once it is shown. */
export interface ShownPage {
  readonly name: string;
  readonly path: string;
  readonly ready: RegExp | string;
}

type Imports = Awaited<ReturnType<typeof fillImports>>;

/** Every page of the product, with records of Alder Bay Hospital in it. */
export function pagesOf(
  hospital: AlderBay,
  beds: Awaited<ReturnType<typeof fillRound>>,
  imports: Imports,
  caseId: number,
): ShownPage[] {
  return [
    ...bedsidePages(hospital, beds[10]),
    ...deskPages(hospital, beds[10].patientId, imports),
    ...culturePages(beds[10].patientId, caseId),
  ];
}

/** The pages of cultures, and of what the definitions say of them. */
function culturePages(patientId: number, caseId: number): ShownPage[] {
  return [
    { name: "cultures", path: `/patients/${patientId}/cultures`, ready: "Signs, newest day first" },
    { name: "cultures waiting", path: "/cases?list=all", ready: /urine of/ },
    { name: "case", path: `/cases/${caseId}`, ready: "Step by step" },
    { name: "rules", path: "/rules", ready: "Open points" },
    {
      name: "rules compared",
      path: "/rules?edition=us-2024&other=ecdc-2017&first=2026-11-01&last=2026-11-20#differences",
      ready: /compared/,
    },
  ];
}

/** The pages that a nurse uses on the ward. */
function bedsidePages(hospital: AlderBay, { patientId, stayId, catheterId }: Placed): ShownPage[] {
  const ward = hospital.wards["3E"];
  const catheter = `/patients/${patientId}/catheters/${catheterId}`;
  const stay = `/patients/${patientId}/stays/${stayId}`;
  return [
    { name: "home", path: "/", ready: /Round of 4N/ },
    { name: "round", path: `/wards/${ward}/round`, ready: "BED-10" },
    { name: "past round", path: `/wards/${ward}/round?day=2026-11-19`, ready: "BED-10" },
    { name: "empty round", path: `/wards/${hospital.wards.OBS}/round`, ready: /No catheter is in place on OBS/ },
    { name: "patients", path: `/wards/${ward}/patients`, ready: "BED-10" },
    { name: "admission", path: `/wards/${ward}/admission`, ready: "The number of the stay" },
    { name: "record", path: `/patients/${patientId}`, ready: "Stay BED-10" },
    { name: "story", path: catheter, ready: "Entries, newest first" },
    { name: "insertion", path: `${stay}/insertion`, ready: "Step 1 of 6: Before you begin" },
    { name: "insertion, the catheter", path: `${stay}/insertion?step=3`, ready: "Step 3 of 6: The catheter" },
    { name: "insertion, check", path: `${stay}/insertion?step=6`, ready: "Step 6 of 6: Check and record" },
    { name: "arrival", path: `${stay}/arrival`, ready: "Confirmed in place at" },
    { name: "care", path: `${catheter}/care`, ready: "All kept" },
    { name: "removal", path: `${catheter}/removal`, ready: "When was it removed?" },
  ];
}

/** The pages of figures, files and settings, and those that belong to none. */
function deskPages(hospital: AlderBay, patientId: number, imports: Imports): ShownPage[] {
  const ward = hospital.wards["3E"];
  return [
    { name: "month", path: "/months/2026-11", ready: "All units" },
    { name: "infections", path: "/infections?first=2026-10-01&last=2026-11-20", ready: "Cautions" },
    { name: "two months", path: "/months/2026-11?beside=2026-10", ready: "Two months side by side" },
    { name: "comparison", path: "/comparison", ready: "Device utilization by month" },
    {
      name: "two compared",
      path: "/comparison?ward=3E&first=3E&firstFrom=2026-11&firstTo=2026-11&second=4N&secondFrom=2026-11&secondTo=2026-11",
      ready: "In words",
    },
    { name: "imports", path: "/imports", ready: "Send files" },
    { name: "import, tried", path: `/imports/${imports.tried}`, ready: "Discard this import" },
    { name: "import, stored", path: `/imports/${imports.stored}`, ready: "Repair moves.csv, line 3" },
    { name: "settings", path: "/settings", ready: "What its rules print" },
    { name: "policy", path: "/settings/policy", ready: "Set this version" },
    { name: "policy of a ward", path: `/settings/policy?ward=${ward}`, ready: "What is to hold" },
    { name: "wards", path: "/settings/wards", ready: "Add the unit" },
    { name: "ward", path: `/settings/wards/${ward}`, ready: "Record what it is" },
    { name: "census", path: "/settings/census", ready: "Set the census time" },
    { name: "baselines", path: "/settings/baselines", ready: "Add this baseline" },
    { name: "scope", path: "/settings/scope", ready: "Put under surveillance" },
    { name: "words", path: "/settings/words", ready: "Import choices" },
    { name: "sources", path: "/settings/sources", ready: "Add a source" },
    { name: "audit", path: "/audit", ready: "Check the chain" },
    { name: "access", path: `/audit?patient=${patientId}`, ready: "Looked at a patient's record" },
    { name: "style", path: "/style", ready: "Another person changed it first" },
    { name: "terms", path: "/terms", ready: "Patient-day" },
    { name: "unknown", path: "/nowhere", ready: "There is no such page" },
  ];
}
