import type { Sheet } from "../../../shared/sheet.ts";

/** A sheet that was made of some wards only, so that nobody takes its total for the facility's. */
export function ofOwnWards(sheet: Sheet): Sheet {
  return {
    ...sheet,
    total: sheet.total && ["Your units", ...sheet.total.slice(1)],
    cautions: ["Only your units are shown. The total covers these units only.", ...sheet.cautions],
  };
}
