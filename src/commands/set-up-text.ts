import type { Config } from "../config.ts";

/** What is told when the first facility is set up from the settings: zone and census time are fixed by it. */
export function setUpText({ facility }: Pick<Config, "facility">): string {
  const { name, zone, censusTime } = facility;
  return `Setting up "${name}": time zone ${zone}, daily census at ${censusTime}. The zone cannot change after the first admission.`;
}
