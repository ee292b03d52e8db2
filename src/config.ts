import { z } from "zod";

const settings = z.object({
  /** Where the record is kept: a file for SQLite, or a PostgreSQL URL. */
  DWELL_DATABASE_URL: z.string().min(1).default("file:data/dwell-ledger.sqlite"),
  /** The port of the web page and the API. The address is always this machine's own until sign-in exists. */
  DWELL_PORT: z.coerce.number().int().min(0).max(65_535).default(8460),
  /** Used once, when the first facility is set up. */
  DWELL_FACILITY_NAME: z.string().min(1).default("Our hospital"),
  DWELL_ZONE: z.string().min(1).optional(),
  DWELL_CENSUS_TIME: z
    .string()
    .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, "write the time as HH:MM, from 00:00 to 24:00")
    .default("00:00"),
  DWELL_LOG_LEVEL: z.enum(["fatal", "error", "warn", "info", "debug", "silent"]).default("info"),
});

export interface Config {
  readonly databaseUrl: string;
  readonly port: number;
  readonly facility: { readonly name: string; readonly zone: string; readonly censusTime: string };
  readonly logLevel: "fatal" | "error" | "warn" | "info" | "debug" | "silent";
}

/**
 * The settings from the environment; nothing else reads it.
 * Throws an Error that names every setting at fault, never its value: one may hold a password.
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const parsed = settings.safeParse(environment);
  if (!parsed.success) {
    const faults = parsed.error.issues.map((issue) => `${issue.path.join(".")}: ${issue.message}`);
    throw new Error(`These settings cannot be used. ${faults.join("; ")}`);
  }
  const { data } = parsed;
  return {
    databaseUrl: data.DWELL_DATABASE_URL,
    port: data.DWELL_PORT,
    facility: {
      name: data.DWELL_FACILITY_NAME,
      zone: data.DWELL_ZONE ?? Intl.DateTimeFormat().resolvedOptions().timeZone,
      censusTime: data.DWELL_CENSUS_TIME,
    },
    logLevel: data.DWELL_LOG_LEVEL,
  };
}
