import type { listReadings as endpoint } from "../../../shared/api/editions.ts";
import type { Month } from "../../../shared/day.ts";
import type { EditionId } from "../../../shared/edition-words.ts";
import type { OutputOf } from "../../../shared/endpoint.ts";
import { refuse } from "../../../shared/problems.ts";
import type { Edition, OpenPoint } from "../../domain/criteria/index.ts";
import { monthOf } from "../../domain/days/month.ts";
import { zoneNamed } from "../../domain/days/zone.ts";
import { editionNamed } from "../../domain/editions/index.ts";
import { writeAudit } from "../../store/audit.ts";
import { addChosenReading, chosenReadings } from "../../store/chosen-readings.ts";
import { facility, lockFacility } from "../../store/facilities.ts";
import { type Act, recording } from "../act.ts";

export interface ChooseReading {
  readonly editionId: EditionId;
  readonly option: string;
  /** One of the values that the edition names for the option. */
  readonly value: string | number | boolean;
  readonly fromMonth: Month;
  readonly reason: string;
}

/**
 * Chooses another reading of an open point from a month to come, so that no determination that was made changes, and no
 * signed month. Refuses `unknown-reading`, `reading-not-to-come` and `reading-chosen-already`.
 */
export function chooseReading(act: Act, input: ChooseReading): Promise<{ fromMonth: Month }> {
  const { editionId, fromMonth, reason } = input;
  const by = recording(act);
  return act.store.tx(async (tx) => {
    await lockFacility(tx, by.facilityId);
    const edition = held(editionId);
    const { option, value } = namedReading(edition, input);
    const { zone } = await facility(tx, by.facilityId);
    if (fromMonth <= monthOf(zoneNamed(zone).dayOf(act.now)))
      refuse("reading-not-to-come", "Months that have begun, and signed ones, keep their reading.", {
        pointer: "/fromMonth",
      });
    const chosen = await chosenReadings(tx, by.facilityId);
    if (chosen.some((one) => one.editionId === editionId && one.option === option && one.fromMonth === fromMonth))
      refuse("reading-chosen-already", "A reading of this point is chosen from that month on.", {
        pointer: "/fromMonth",
      });
    await addChosenReading(tx, by, { editionId, option, value, fromMonth, reason });
    await writeAudit(tx, by, { action: "choose-reading", details: { editionId, option, value, fromMonth, reason } });
    return { fromMonth };
  });
}

function held(editionId: EditionId): Edition {
  const edition = editionNamed(editionId);
  if (!edition) throw new Error(`the edition ${editionId} is named and not held`);
  return edition;
}

function namedReading(edition: Edition, { option, value }: Pick<ChooseReading, "option" | "value">) {
  const point = edition.openPoints.find((one) => one.option === option);
  if (!point) refuse("unknown-reading", "The edition has no such open point.", { pointer: "/option" });
  const found = valuesOf(point, edition).find((one) => one.value === value);
  if (!found) refuse("unknown-reading", "The open point has no such reading.", { pointer: "/value" });
  return { option: point.option, value: found.value };
}

/** The readings of a point that can be chosen: that of the edition, and the others. */
function valuesOf({ option, otherValues, reading, otherReading }: OpenPoint, { defaults }: Edition) {
  const others = otherValues.map((value) => ({
    ...{ value, words: typeof value === "number" ? String(value) : otherReading },
  }));
  return [{ value: defaults[option], words: reading }, ...others];
}

/** The open points of an edition with the readings that can be chosen, and what the facility chose. */
export function listReadings(
  act: Act,
  { editionId }: { readonly editionId: EditionId },
): Promise<OutputOf<typeof endpoint>> {
  const edition = held(editionId);
  return act.store.read(async (read) => {
    const chosen = await chosenReadings(read, act.actor.facilityId);
    const points = edition.openPoints.map((point) => ({
      ...{ option: point.option, point: point.point, readings: valuesOf(point, edition) },
    }));
    const wordsOf = (option: string, value: unknown) =>
      points.find((one) => one.option === option)?.readings.find((one) => one.value === value)?.words ?? "";
    return {
      points,
      chosen: chosen
        .filter((one) => one.editionId === editionId)
        .map(({ option, value, fromMonth, reason, recordedAt, recordedBy }) => ({
          ...{ option, value, fromMonth, reason, recordedAt, recordedBy },
          point: points.find((one) => one.option === option)?.point ?? option,
          reading: wordsOf(option, value),
        })),
    };
  });
}
