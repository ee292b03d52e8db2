import { revise, type Stay, stands } from "./timeline.ts";

/**
 * A stay whose admission was corrected, with its catheters as the new one tells: inserted before it, a catheter was in
 * place on arrival; inserted after it, it was not. At that very instant what was said of it holds.
 */
export function withArrivals(stay: Stay): Stay {
  const catheters = stay.catheters.map((catheter) => {
    const { insertedAt } = catheter;
    if (!stands(catheter) || insertedAt === null || insertedAt === stay.admittedAt) return catheter;
    const inPlaceOnArrival = insertedAt < stay.admittedAt;
    return catheter.inPlaceOnArrival === inPlaceOnArrival ? catheter : revise(catheter, { inPlaceOnArrival });
  });
  return catheters.every((catheter, i) => catheter === stay.catheters[i]) ? stay : { ...stay, catheters };
}
