import type {
  listChangedMonths as listEndpoint,
  readMonthSignatures as signaturesEndpoint,
} from "../../../shared/api/month-figures.ts";
import type { Month } from "../../../shared/day.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import type { FigureChange } from "../../../shared/signed-changes.ts";
import { openSignedMonthChanges, signedMonthChanges } from "../../store/signed-month-changes.ts";
import type { Read } from "../../store/store.ts";
import type { Act } from "../act.ts";
import { groupedBy } from "../grouped-by.ts";
import { type Reach, reachOf } from "../reach.ts";

type Changes = OutputOf<typeof signaturesEndpoint>["changes"];

/**
 * What changed a month after it was signed, as far as it changed figures of wards within reach. Who sees no patients is
 * not led to one.
 */
export async function changesOfMonth(
  read: Read,
  { actor }: Pick<Act, "actor">,
  { month, wardIds }: { month: Month } & Reach,
): Promise<Changes> {
  const seesPatients = reachOf(actor, "see-patients") !== null;
  const all = await signedMonthChanges(read, actor.facilityId, month);
  return all.flatMap(({ id: changeId, number, at, personId: by, action, entry, figures, isOpen }) => {
    const shown = figuresWithin(figures, wardIds);
    if (shown.length === 0 && figures.length > 0) return [];
    const isShown = entry !== null && (seesPatients || entry.kind === "ward" || entry.kind === "import");
    return [{ changeId, number, at, by, action, entry: isShown ? entry : null, figures: shown, isOpen }];
  });
}

/** The months of which something is no longer as it was signed, the latest first. */
export async function listChangedMonths({ store, actor }: Act): Promise<OutputOf<typeof listEndpoint>> {
  const open = await store.read((read) => openSignedMonthChanges(read, actor.facilityId));
  const months = [...groupedBy(open, ({ month }) => month)].flatMap(([month, changes]) => {
    const [latest] = changes;
    if (!latest) return [];
    const wards = new Set(changes.flatMap(({ figures }) => figures.flatMap(({ ward }) => ward ?? [])));
    const { at, personId: by, action } = latest;
    return [{ month, changes: changes.length, wards: [...wards].sort(), latest: { at, by, action } }];
  });
  return { months: months.sort((a, b) => (a.month < b.month ? 1 : -1)) };
}

/** The figures of the wards within reach; without all of them there is no total. */
export function figuresWithin(figures: readonly FigureChange[], wardIds: Reach["wardIds"]): FigureChange[] {
  return figures.filter(({ wardId }) => !wardIds || (wardId !== null && wardIds.includes(wardId)));
}
