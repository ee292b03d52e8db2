import { describe, expect, it } from "vitest";
import { Problem } from "../shared/problems.ts";
import { readConfig } from "../src/config.ts";

/** What is said about settings that cannot be used. */
function complaint(environment: Record<string, string>): string {
  try {
    readConfig(environment);
  } catch (error) {
    if (error instanceof Problem && error.code === "setting-unusable") return error.message;
    throw error;
  }
  throw new Error("these settings were taken");
}

describe("settings", () => {
  it("have a default each, so that nothing has to be set", () => {
    expect(readConfig({})).toEqual({
      databaseUrl: "file:data/dwell-ledger.sqlite",
      port: 8460,
      facility: {
        name: "Our hospital",
        zone: Intl.DateTimeFormat().resolvedOptions().timeZone,
        censusTime: "00:00",
      },
      logLevel: "info",
    });
  });

  it("are taken from the environment, and what else is in it is not looked at", () => {
    const config = readConfig({
      DWELL_DATABASE_URL: "postgresql://ledger@localhost/ledger",
      DWELL_PORT: "0",
      DWELL_FACILITY_NAME: "Alder Bay Hospital",
      DWELL_ZONE: "America/New_York",
      DWELL_CENSUS_TIME: "24:00",
      DWELL_LOG_LEVEL: "silent",
      PATH: "/usr/bin",
    });
    expect(config).toEqual({
      databaseUrl: "postgresql://ledger@localhost/ledger",
      port: 0,
      facility: { name: "Alder Bay Hospital", zone: "America/New_York", censusTime: "24:00" },
      logLevel: "silent",
    });
  });

  it.each([
    ["DWELL_DATABASE_URL", ""],
    ["DWELL_PORT", ""],
    ["DWELL_PORT", "http"],
    ["DWELL_PORT", "-1"],
    ["DWELL_PORT", "65536"],
    ["DWELL_PORT", "80.5"],
    ["DWELL_PORT", "0x50"],
    ["DWELL_FACILITY_NAME", ""],
    ["DWELL_ZONE", ""],
    ["DWELL_CENSUS_TIME", "7:00"],
    ["DWELL_CENSUS_TIME", "24:01"],
    ["DWELL_LOG_LEVEL", "loud"],
  ])("refuse %s=%j by name, in one sentence", (name, value) => {
    const said = complaint({ [name]: value });
    expect(said).toMatch(new RegExp(`^Not every setting can be used: ${name} \\([^()]+\\)\\.$`));
  });

  it("are refused all at once, and never with their values", () => {
    const secret = "s3cret-word";
    const said = complaint({ DWELL_PORT: secret, DWELL_CENSUS_TIME: secret, DWELL_LOG_LEVEL: secret });
    expect(said).toMatch(/DWELL_PORT .*DWELL_CENSUS_TIME .*DWELL_LOG_LEVEL /);
    expect(said).not.toContain(secret);
  });
});
