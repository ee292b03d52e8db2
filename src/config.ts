import { z } from "zod";
import { refuse } from "../shared/problems.ts";

const filled = z.string().min(1, { error: "write something, or leave the setting out", abort: true });

const logLevels = ["fatal", "error", "warn", "info", "debug", "silent"] as const;

const settings = z.object({
  /** Where the record is kept: a file for SQLite, or a PostgreSQL URL. */
  DWELL_DATABASE_URL: filled.default("file:data/dwell-ledger.sqlite"),
  /** The port of the web page and the API. The address is always this machine's own until sign-in exists. */
  DWELL_PORT: z
    .string()
    .regex(/^\d{1,5}$/, "write a whole number from 0 to 65535")
    .transform(Number)
    .refine((port) => port <= 65_535, "write a whole number from 0 to 65535")
    .default(8460),
  /** Used once, when the first facility is set up. */
  DWELL_FACILITY_NAME: filled.default("Our hospital"),
  DWELL_ZONE: filled.refine(isZone, "write an IANA time zone name such as America/New_York").optional(),
  DWELL_CENSUS_TIME: z
    .string()
    .regex(/^(([01]\d|2[0-3]):[0-5]\d|24:00)$/, "write the time as HH:MM, from 00:00 to 24:00")
    .default("00:00"),
  /** The browser that prints documents; without it one is looked for where they usually are. */
  CHROMIUM_PATH: filled.optional(),
  DWELL_LOG_LEVEL: z.enum(logLevels, `write one of ${logLevels.join(", ")}`).default("info"),
});

function isZone(name: string): boolean {
  try {
    return new Intl.DateTimeFormat("en", { timeZone: name }).resolvedOptions().timeZone !== "";
  } catch {
    return false;
  }
}

export interface Config {
  readonly databaseUrl: string;
  readonly port: number;
  readonly facility: { readonly name: string; readonly zone: string; readonly censusTime: string };
  readonly browserPath: string | null;
  readonly logLevel: (typeof logLevels)[number];
}

/**
 * The settings from the environment; nothing else reads it.
 * Refuses `setting-unusable` and names every setting at fault, never its value: one may hold a password.
 */
export function readConfig(environment: Readonly<Record<string, string | undefined>>): Config {
  const parsed = settings.safeParse(environment);
  if (!parsed.success) {
    const faults = parsed.error.issues.map((issue) => `${issue.path.join(".")} (${issue.message})`);
    return refuse("setting-unusable", `Not every setting can be used: ${faults.join(", ")}.`);
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
    browserPath: data.CHROMIUM_PATH ?? null,
    logLevel: data.DWELL_LOG_LEVEL,
  };
}
