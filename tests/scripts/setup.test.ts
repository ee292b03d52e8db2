import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { installObstacle } from "../../scripts/install.mjs";
import { stampSchema } from "../../scripts/prisma-clients.mjs";
import { refuseOldNode } from "../../scripts/setup.mjs";
import { digestOf, isStamped, writeStamp } from "../../scripts/stamp.mjs";
import { tempFolder } from "./temp-folder.ts";

describe("setting up", () => {
  it("refuses a Node that is too old, and says which one is needed", () => {
    expect(() => refuseOldNode("20.18.3")).toThrow("needs Node 20.19 or newer, and this is Node 20.18.3");
    expect(() => refuseOldNode("18.20.0")).toThrow("needs Node 20.19");
    for (const version of ["20.19.0", "20.20.2", "22.0.0", "24.11.1"])
      expect(() => refuseOldNode(version)).not.toThrow();
  });

  it("names the tools that a failed compilation lacks", () => {
    const output = "npm error gyp ERR! stack Error: not found: make";
    expect(installObstacle({ code: 1, output, missing: ["g++", "make"] })).toMatch(/lacks g\+\+, make: on Debian/);
  });

  it("names Node's header files when they could not be had", () => {
    const output = "npm error gyp ERR! stack FetchError: request failed, getaddrinfo ENOTFOUND";
    expect(installObstacle({ code: 1, output, missing: [] })).toMatch(/header files.*npm_config_nodedir/);
  });

  it("points to npm's own words for any other failure", () => {
    expect(installObstacle({ code: 7, output: "npm error code EACCES", missing: ["make"] })).toMatch(/exit code 7/);
  });

  it("says so when install scripts are switched off", () => {
    expect(installObstacle({ code: 0, output: "", missing: [] })).toMatch(/ignore install scripts/);
  });
});

describe("the schema of one database", () => {
  const schema =
    'generator client {\n  output = "a"\n}\ndatasource db {\n  provider = "sqlite"\n}\nmodel A { id Int @id }\n';

  it("differs in provider and folder only", () => {
    expect(stampSchema(schema, { provider: "postgresql", output: "/clients/$1" })).toBe(
      schema.replace('"a"', '"/clients/$1"').replace("sqlite", "postgresql"),
    );
  });

  it("is refused when there is nothing to stamp", () => {
    expect(() => stampSchema("model A { id Int @id }", { provider: "sqlite", output: "/a" })).toThrow(/one datasource/);
  });
});

describe("a stamp", () => {
  it("is stale once a file or the version behind it changes", () => {
    const stamp = join(tempFolder(), "inner", "stamp");
    expect(isStamped(stamp, digestOf(["package.json"]))).toBe(false);
    writeStamp(stamp, digestOf(["package.json"], "7.10.0"));
    expect(isStamped(stamp, digestOf(["package.json"], "7.10.0"))).toBe(true);
    expect(isStamped(stamp, digestOf(["package.json"], "7.10.1"))).toBe(false);
    expect(isStamped(stamp, digestOf(["package.json", "tsconfig.json"], "7.10.0"))).toBe(false);
    writeFileSync(stamp, "half");
    expect(isStamped(stamp, digestOf(["package.json"], "7.10.0"))).toBe(false);
  });
});
