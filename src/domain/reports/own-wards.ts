import type { Sheet } from "../../../shared/sheet.ts";

/** A sheet that was made of some wards only, so that nobody takes its total for the facility's. */
export function ofOwnWards(sheet: Sheet): Sheet {
  return {
    ...sheet,
    total: sheet.total && ["Your wards", ...sheet.total.slice(1)],
    cautions: ["Only the wards that you belong to are shown, and the total is theirs.", ...sheet.cautions],
  };
}
