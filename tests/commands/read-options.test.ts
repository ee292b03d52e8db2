import { describe, expect, it } from "vitest";
import { UsageError } from "../../src/commands/command.ts";
import { readOptions } from "../../src/commands/read-options.ts";

const options = { data: { type: "string" }, "dry-run": { type: "boolean", default: false } } as const;

describe("the options of a command", () => {
  it("are read by their names, with their defaults", () => {
    expect({ ...readOptions(["--data", "in", "--dry-run"], options).values }).toEqual({ data: "in", "dry-run": true });
    expect({ ...readOptions(["--data=in=x"], options).values }).toEqual({ data: "in=x", "dry-run": false });
  });

  it("leave words that are no options, where a command takes some", () => {
    expect(readOptions(["verify"], {}, { positionals: true }).positionals).toEqual(["verify"]);
  });

  it.each([
    [["--month"], "--month"],
    [["--data"], "--data"],
    [["--data", "--dry-run"], "--data"],
    [["--dry-run=yes"], "--dry-run"],
    [["verify"], "verify"],
  ])("refuse %j as wrong usage, in one sentence that names it", (args, named) => {
    const read = () => readOptions(args, options);
    expect(read).toThrow(UsageError);
    expect(read).toThrow(named);
    expect(read).toThrow(/^[^\n]+[^.]\.$/);
  });

  it("refuse an unknown one with the option that was probably meant", () => {
    expect(() => readOptions(["--dat=in"], options)).toThrow("Unknown option '--dat'. Did you mean --data?");
    expect(() => readOptions(["--month=in"], options)).toThrow(/^Unknown option '--month'\.$/);
  });
});
