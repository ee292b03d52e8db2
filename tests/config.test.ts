import { describe, expect, it } from "vitest";
import { Problem } from "../shared/problems.ts";
import { readConfig } from "../src/config.ts";
import { zoneNamed } from "../src/domain/days/zone.ts";

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
      browserPath: null,
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
      CHROMIUM_PATH: "/usr/bin/chromium",
      PATH: "/usr/bin",
    });
    expect(config).toEqual({
      databaseUrl: "postgresql://ledger@localhost/ledger",
      port: 0,
      facility: { name: "Alder Bay Hospital", zone: "America/New_York", censusTime: "24:00" },
      logLevel: "silent",
      browserPath: "/usr/bin/chromium",
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
    ["DWELL_ZONE", "Alder/Bay"],
    ["DWELL_ZONE", "America/New_York "],
    ["DWELL_CENSUS_TIME", "7:00"],
    ["DWELL_CENSUS_TIME", "24:01"],
    ["DWELL_LOG_LEVEL", "loud"],
  ])("refuse %s=%j by name, in one sentence", (name, value) => {
    const said = complaint({ [name]: value });
    expect(said).toMatch(new RegExp(`^Not every setting can be used: ${name} \\([^()]+\\)\\.$`));
  });

  it.each(["America/New_York", "america/new_york", "US/Eastern", "Etc/GMT+5", "UTC"])(
    "take the time zone %s, by which days can be counted",
    (DWELL_ZONE) => {
      const { facility } = readConfig({ DWELL_ZONE });
      expect(facility.zone).toBe(DWELL_ZONE);
      expect(zoneNamed(facility.zone).dayOf(0)).toBe(DWELL_ZONE === "UTC" ? 0 : -1);
    },
  );

  it("say of a time zone how it is written", () => {
    expect(complaint({ DWELL_ZONE: "Eastern" })).toBe(
      "Not every setting can be used: DWELL_ZONE (write an IANA time zone name such as America/New_York).",
    );
  });

  it("are refused all at once, and never with their values", () => {
    const secret = "s3cret-word";
    const faulty = { DWELL_PORT: secret, DWELL_ZONE: secret, DWELL_CENSUS_TIME: secret, DWELL_LOG_LEVEL: secret };
    const said = complaint(faulty);
    expect(said).toMatch(/DWELL_PORT .*DWELL_ZONE .*DWELL_CENSUS_TIME .*DWELL_LOG_LEVEL /);
    expect(said).not.toContain(secret);
  });
});
